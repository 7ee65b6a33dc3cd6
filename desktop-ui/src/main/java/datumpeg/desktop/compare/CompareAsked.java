package datumpeg.desktop.compare;

import datumpeg.analysis.compare.Factor;
import datumpeg.analysis.trend.PointPer;
import datumpeg.analysis.trend.RoundChoice;
import datumpeg.analysis.trend.TrendFilter;
import datumpeg.analysis.trend.TrendQuestion;
import datumpeg.analysis.trend.TrendScale;
import datumpeg.desktop.control.LastAsked;
import datumpeg.desktop.source.RecordState;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the screen is asked to compare. Immutable.
 *
 * @param chosen ids by matter; a matter that is not there is open, or its first choice
 * @param from first day, of UTC
 * @param to last day
 */
record CompareAsked(
    RecordState state,
    Map<CompareMatter, String> chosen,
    Optional<LocalDate> from,
    Optional<LocalDate> to) {
  private static final List<CompareMatter> FILTERS =
      List.of(
          CompareMatter.TARGET,
          CompareMatter.CREW,
          CompareMatter.SITE,
          CompareMatter.METER,
          CompareMatter.SLAB);

  CompareAsked {
    chosen = Map.copyOf(chosen);
  }

  CompareAsked with(LastAsked<CompareMatter> last) {
    return new CompareAsked(state, last.chosen(), last.from(), last.to());
  }

  LastAsked<CompareMatter> last() {
    return new LastAsked<>(chosen, from, to);
  }

  CompareAsked with(RecordState newState) {
    return new CompareAsked(newState, chosen, from, to);
  }

  /** Chooses; another check leaves the target open. */
  CompareAsked with(CompareMatter matter, String id) {
    Map<CompareMatter, String> other = new EnumMap<>(CompareMatter.class);
    other.putAll(chosen);
    other.put(matter, id);
    if (matter == CompareMatter.CHECK) {
      other.remove(CompareMatter.TARGET);
    }
    return new CompareAsked(state, other, from, to);
  }

  CompareAsked between(Optional<LocalDate> newFrom, Optional<LocalDate> newTo) {
    return new CompareAsked(state, chosen, newFrom, newTo);
  }

  /** Whether only some jobs or outcomes are asked about. */
  boolean isFiltered() {
    return from.isPresent()
        || to.isPresent()
        || FILTERS.stream().anyMatch(matter -> !chosen(matter).isEmpty());
  }

  String chosen(CompareMatter matter) {
    return chosen.getOrDefault(matter, "");
  }

  Factor factor() {
    return of(Factor.values(), CompareMatter.FACTOR);
  }

  TrendQuestion question(String check) {
    return new TrendQuestion(
        new TrendFilter(
            check,
            chosen(CompareMatter.TARGET),
            "",
            chosen(CompareMatter.CREW),
            chosen(CompareMatter.SITE),
            chosen(CompareMatter.METER),
            chosen(CompareMatter.SLAB),
            from.map(day -> day.atStartOfDay(ZoneOffset.UTC).toInstant()),
            to.map(day -> day.plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant())),
        of(RoundChoice.values(), CompareMatter.ROUNDS),
        PointPer.TARGET,
        of(TrendScale.values(), CompareMatter.SCALE));
  }

  /** The value of that name, or the first. */
  private <E extends Enum<E>> E of(E[] values, CompareMatter matter) {
    for (E value : values) {
      if (value.name().equals(chosen(matter))) {
        return value;
      }
    }
    return values[0];
  }
}
