package datumpeg.analysis.reduce;

import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.Improvement;
import datumpeg.analysis.check.Rounds;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Reading;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What standard uncertainty each outcome would have after each way to make the readings more
 * certain: the stage reduced once more for each way, so that what cancels in an outcome is known to
 * cancel.
 */
final class Prospects {
  private final Map<String, Map<Improvement, Double>> byOutcome;

  private Prospects(Map<String, Map<Improvement, Double>> byOutcome) {
    this.byOutcome = byOutcome;
  }

  /**
   * @param checks those with something undecided; the others need no advice
   */
  static Prospects of(List<Check> checks, Job job, List<Reading> ofStage, Rounds rounds) {
    Map<String, Map<Improvement, Double>> byOutcome = new HashMap<>();
    for (Improvement improvement : EnumSet.complementOf(EnumSet.of(Improvement.NONE))) {
      StageReadings readings = new StageReadings(job, ofStage, rounds, improvement);
      for (Check check : checks) {
        for (Outcome outcome : check.of(readings).outcomes()) {
          byOutcome
              .computeIfAbsent(key(outcome), key -> new EnumMap<>(Improvement.class))
              .put(improvement, outcome.standardUncertainty());
        }
      }
    }
    return new Prospects(byOutcome);
  }

  /** What is left of an outcome's standard uncertainty by way of improving; empty if unknown. */
  Map<Improvement, Double> of(Outcome outcome) {
    return byOutcome.getOrDefault(key(outcome), Map.of());
  }

  private static String key(Outcome outcome) {
    return outcome.check() + " " + outcome.target();
  }
}
