package datumpeg.analysis.reduce;

import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.hipparchus.stat.descriptive.StreamingStatistics;

/**
 * Many simulated jobs through the whole reduction: does what it says hold as often as it says? One
 * thread.
 */
final class CoverageStudy {
  /** Every so many jobs one has a slab with an inner corner. */
  private static final int INNER_CORNER_EVERY = 4;

  private final Job rectangle = SimulatedSurvey.job();
  private final Job innerCorner = SimulatedSurvey.jobWithAnInnerCorner();
  private final Map<String, CheckTally> tallies = new TreeMap<>();
  private final Map<String, StreamingStatistics> varianceFactors = new TreeMap<>();
  private final Map<String, StreamingStatistics> rejectedNetworks = new TreeMap<>();
  private final Map<String, StreamingStatistics> suspicions = new TreeMap<>();
  private final Set<String> withoutTruth = new TreeSet<>();

  /** Runs so many jobs; the seed of each is the first seed and its number. */
  static CoverageStudy of(int jobs, long firstSeed) {
    CoverageStudy study = new CoverageStudy();
    for (int i = 0; i < jobs; i++) {
      study.run(firstSeed + i);
    }
    return study;
  }

  private void run(long seed) {
    Job job = seed % INNER_CORNER_EVERY == 0 ? innerCorner : rectangle;
    SimulatedSurvey survey = SimulatedSurvey.draw(job, seed);
    Findings findings = new Reduction(job, "simulated").reduce(survey.readings(), List.of());
    for (StageFindings stage : findings.stages()) {
      stage.outcomes().forEach(outcome -> add(outcome, survey));
      stage.networks().forEach(network -> add(stage.stage() + ", " + network.name(), network));
      boolean suspected =
          stage.notes().stream().anyMatch(note -> note.kind() == Note.Kind.SLIP_SUSPECTED);
      count(suspicions, stage.stage(), suspected ? 1 : 0);
    }
    tallies.values().forEach(CheckTally::endJob);
  }

  private void add(Outcome outcome, SimulatedSurvey survey) {
    TrueValues.of(outcome.check())
        .ifPresentOrElse(
            known ->
                tallies
                    .computeIfAbsent(outcome.check(), check -> new CheckTally(known.kind()))
                    .add(
                        outcome,
                        known.truth().metres(survey.site(), outcome.target())
                            - TrueValues.warmthMetres(outcome, survey)),
            () -> withoutTruth.add(outcome.check()));
  }

  private void add(String name, Network network) {
    network.varianceFactor().ifPresent(factor -> count(varianceFactors, name, factor));
    network.probability().ifPresent(p -> count(rejectedNetworks, name, p < 0.05 ? 1 : 0));
  }

  private static void count(Map<String, StreamingStatistics> into, String name, double value) {
    into.computeIfAbsent(name, key -> new StreamingStatistics()).addValue(value);
  }

  /** By check. */
  Map<String, CheckTally> tallies() {
    return tallies;
  }

  /** Variance factors of the networks, by stage and name; expected 1 in the mean. */
  Map<String, StreamingStatistics> varianceFactors() {
    return varianceFactors;
  }

  /** 1 for a network whose readings do not fit together at 5 %, else 0, by stage and name. */
  Map<String, StreamingStatistics> rejectedNetworks() {
    return rejectedNetworks;
  }

  /** 1 for a stage in which a slip is suspected though there is none, else 0, by stage. */
  Map<String, StreamingStatistics> suspicions() {
    return suspicions;
  }

  /** Checks that gave outcomes of which nobody has said what is true. */
  Set<String> withoutTruth() {
    return withoutTruth;
  }
}
