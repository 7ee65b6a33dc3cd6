package datumpeg.desktop.trend;

import datumpeg.analysis.trend.PointPer;
import datumpeg.analysis.trend.RoundChoice;
import datumpeg.analysis.trend.RunRules;
import datumpeg.analysis.trend.TrendFilter;
import datumpeg.analysis.trend.TrendQuestion;
import datumpeg.analysis.trend.TrendScale;
import datumpeg.desktop.control.LastAsked;
import datumpeg.desktop.source.RecordState;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * What the screen is asked to show over jobs. Immutable.
 *
 * @param chosen ids by matter; a matter that is not there is open
 * @param from first day, of UTC
 * @param to last day
 */
record TrendAsked(
    RecordState state,
    Map<TrendMatter, String> chosen,
    Optional<LocalDate> from,
    Optional<LocalDate> to) {
  static final String MOVING_AVERAGE = "EWMA";

  TrendAsked {
    chosen = Map.copyOf(chosen);
  }

  TrendAsked with(LastAsked<TrendMatter> last) {
    return new TrendAsked(state, last.chosen(), last.from(), last.to());
  }

  LastAsked<TrendMatter> last() {
    return new LastAsked<>(chosen, from, to);
  }

  TrendAsked with(RecordState newState) {
    return new TrendAsked(newState, chosen, from, to);
  }

  /** Chooses; another check leaves the target open. */
  TrendAsked with(TrendMatter matter, String id) {
    Map<TrendMatter, String> other = new EnumMap<>(TrendMatter.class);
    other.putAll(chosen);
    other.put(matter, id);
    if (matter == TrendMatter.CHECK) {
      other.remove(TrendMatter.TARGET);
    }
    return new TrendAsked(state, other, from, to);
  }

  TrendAsked between(Optional<LocalDate> newFrom, Optional<LocalDate> newTo) {
    return new TrendAsked(state, chosen, newFrom, newTo);
  }

  String chosen(TrendMatter matter) {
    return chosen.getOrDefault(matter, "");
  }

  TrendQuestion question(String check) {
    return new TrendQuestion(
        new TrendFilter(
            check,
            chosen(TrendMatter.TARGET),
            "",
            chosen(TrendMatter.CREW),
            chosen(TrendMatter.SITE),
            chosen(TrendMatter.METER),
            chosen(TrendMatter.SLAB),
            from.map(day -> day.atStartOfDay(ZoneOffset.UTC).toInstant()),
            to.map(day -> day.plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant())),
        of(RoundChoice.values(), TrendMatter.ROUNDS),
        of(PointPer.values(), TrendMatter.PER),
        of(TrendScale.values(), TrendMatter.SCALE));
  }

  RunRules rules() {
    return of(RunRules.values(), TrendMatter.RULES);
  }

  boolean movingAverage() {
    return chosen(TrendMatter.CHART).equals(MOVING_AVERAGE);
  }

  /** The value of that name, or the first. */
  private <E extends Enum<E>> E of(E[] values, TrendMatter matter) {
    for (E value : values) {
      if (value.name().equals(chosen(matter))) {
        return value;
      }
    }
    return values[0];
  }
}
