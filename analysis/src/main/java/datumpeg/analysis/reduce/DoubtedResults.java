package datumpeg.analysis.reduce;

import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.SlipEffects;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.check.frame.Frames;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.remedy.Millimetres;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * The checks once more where readings of one target contradict each other: each of them is left out
 * in turn, and an outcome that goes elsewhere without it is known no better than that. Nothing is
 * dropped: the outcome keeps its value, and its uncertainty holds both. One use.
 *
 * <p>A target read once that does not fit to others is left as it is: it may be the only reading
 * behind an outcome, and the note says what to read. Frames that contradict each other stand as
 * observed, so that a suspected reading moves only what rests on it; what changes for others is
 * that they could be adjusted again, which is no doubt of them. But the columns read on two faces
 * tell the zero error of the tilt meter for all others, and a wrong face moves them too.
 */
final class DoubtedResults {
  /** Effects smaller than this are rounding. */
  private static final double LEAST = 1e-6;

  /** Half of the last place told, in metres. */
  private static final double SHOWN = 5e-5;

  /** A share of u that leaves u as it is to a twentieth: √(1 + 0.3²) = 1.04. Our choice. */
  private static final double NOTICED = 0.3;

  private final List<Check> checks;
  private final StageReadings readings;
  private final List<CheckResult> results;
  private final Map<String, Double> effects = new HashMap<>();
  private final Map<String, String> behind = new HashMap<>();
  private final Set<Integer> touched = new TreeSet<>();

  DoubtedResults(List<Check> checks, StageReadings readings, List<CheckResult> results) {
    this.checks = checks;
    this.readings = readings;
    this.results = results;
  }

  /**
   * The results with what is in doubt in their uncertainties.
   *
   * @param doubts notes of readings that contradict each other
   */
  List<CheckResult> of(List<Note> doubts) {
    Set<String> suspected = new HashSet<>();
    doubts.forEach(note -> suspected.addAll(note.readingIds()));
    Map<Target, List<Reading>> byTarget =
        readings.all().stream().collect(Collectors.groupingBy(Reading::target));
    byTarget.values().stream()
        .filter(of -> of.size() > 1)
        .filter(of -> of.stream().anyMatch(reading -> suspected.contains(reading.id())))
        .flatMap(List::stream)
        .map(Reading::id)
        .sorted()
        .forEach(this::leaveOut);
    if (effects.isEmpty()) {
      return results;
    }
    StageReadings doubting = readings.doubting(new SlipEffects(effects));
    List<CheckResult> again = new ArrayList<>(results);
    touched.forEach(i -> again.set(i, checks.get(i).of(doubting)));
    return again;
  }

  private void leaveOut(String readingId) {
    StageReadings others = readings.without(readingId);
    for (int i = 0; i < checks.size(); i++) {
      if (results.get(i).used().stream().anyMatch(reading -> reading.id().equals(readingId))) {
        compare(i, readingId, checks.get(i).outcomes(others));
        if (checks.get(i) instanceof Frames frames) {
          zeroError(i, frames, readingId, others);
        }
      }
    }
  }

  /** What a reading moves the leans of other columns by, as observed. */
  private void zeroError(int i, Frames frames, String readingId, StageReadings others) {
    Map<String, Double> with = frames.leansAsObserved(readings);
    Map<String, Double> without = frames.leansAsObserved(others);
    for (Outcome outcome : results.get(i).outcomes()) {
      List<String> leans = leans(outcome);
      if (!leans.isEmpty()
          && without.keySet().containsAll(leans)
          && !outcome.readingIds().contains(readingId)) {
        double moved =
            leans.stream()
                .mapToDouble(lean -> with.getOrDefault(lean, 0.0) - without.getOrDefault(lean, 0.0))
                .average()
                .orElse(0);
        keep(i, outcome, Math.abs(moved), readingId);
      }
    }
  }

  /** The leans an outcome is: of a column its own, of a portal those of both its columns. */
  private static List<String> leans(Outcome outcome) {
    return switch (outcome.check()) {
      case "column-plumb" -> List.of(outcome.target());
      case "portal-plumb" -> List.of("A" + outcome.target(), "B" + outcome.target());
      default -> List.of();
    };
  }

  private void compare(int i, String readingId, List<Outcome> without) {
    Map<String, Outcome> byName = new HashMap<>();
    without.forEach(outcome -> byName.put(name(outcome), outcome));
    for (Outcome outcome : results.get(i).outcomes()) {
      if (checks.get(i) instanceof Frames && !outcome.readingIds().contains(readingId)) {
        continue;
      }
      Outcome other = byName.getOrDefault(name(outcome), outcome);
      keep(i, outcome, Math.abs(outcome.deviation() - other.deviation()), readingId);
    }
  }

  private void keep(int i, Outcome outcome, double effect, String readingId) {
    if (effect > Math.max(LEAST, effects.getOrDefault(name(outcome), 0.0))) {
      effects.put(name(outcome), effect);
      behind.put(name(outcome), readingId);
      touched.add(i);
    }
  }

  private static String name(Outcome outcome) {
    return SlipEffects.name(outcome.check(), outcome.target());
  }

  /** Whether an outcome's uncertainty holds enough for readings in doubt to be told. */
  boolean widens(Outcome outcome) {
    return effect(outcome) >= SHOWN && outcome.unit() == OutcomeUnit.MILLIMETRE;
  }

  /** An outcome with the words for what is in doubt of it. */
  Outcome told(Outcome outcome) {
    return widens(outcome)
        ? outcome.withFurtherAside(
            "U holds "
                + Millimetres.of(effect(outcome))
                + " for readings that contradict each other")
        : outcome;
  }

  private double effect(Outcome outcome) {
    return effects.isEmpty() ? 0 : effects.getOrDefault(name(outcome), 0.0);
  }

  /** The reading that moves an outcome most, where it moves it by more than can be left aside. */
  Optional<String> readingBehind(Outcome outcome) {
    return effect(outcome) < NOTICED * outcome.standardUncertainty()
        ? Optional.empty()
        : Optional.ofNullable(behind.get(name(outcome)));
  }
}
