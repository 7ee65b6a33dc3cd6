package datumpeg.analysis.trend;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.StageFindings;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/**
 * Every outcome a job ever had, in the order of the work: stage by stage, in each stage round by
 * round.
 */
public final class JobHistory {
  private final Job job;
  private final Map<String, Reading> readings = new HashMap<>();
  private final Map<String, Instant> lastOfStage = new HashMap<>();

  private JobHistory(Job job, List<Reading> inForce) {
    this.job = job;
    for (Reading reading : inForce) {
      readings.put(reading.id(), reading);
      lastOfStage.merge(reading.stage(), reading.at(), (a, b) -> a.isAfter(b) ? a : b);
    }
  }

  /**
   * The outcomes of all rounds; where a round's outcome was found more than once, as found last.
   *
   * @param inTime findings, the oldest first
   * @param inForce the readings they rest on
   */
  public static List<DatedOutcome> of(Job job, List<Findings> inTime, List<Reading> inForce) {
    JobHistory history = new JobHistory(job, inForce);
    List<DatedOutcome> outcomes = new ArrayList<>();
    for (Stage stage : job.stages()) {
      for (Map<Integer, Outcome> rounds : roundsOf(stage.id(), inTime).values()) {
        rounds.values().forEach(outcome -> outcomes.add(history.dated(stage.id(), outcome)));
      }
    }
    return List.copyOf(outcomes);
  }

  private static Map<List<String>, Map<Integer, Outcome>> roundsOf(
      String stage, List<Findings> inTime) {
    Map<List<String>, Map<Integer, Outcome>> rounds = new LinkedHashMap<>();
    for (Findings findings : inTime) {
      for (Outcome outcome : findings.stage(stage).map(StageFindings::outcomes).orElse(List.of())) {
        rounds
            .computeIfAbsent(List.of(outcome.check(), outcome.target()), key -> new TreeMap<>())
            .put(outcome.round(), outcome);
      }
    }
    return rounds;
  }

  private DatedOutcome dated(String stage, Outcome outcome) {
    List<Reading> used =
        outcome.readingIds().stream().map(readings::get).filter(Objects::nonNull).toList();
    Instant at =
        used.stream()
            .map(Reading::at)
            .max(Instant::compareTo)
            .orElse(lastOfStage.getOrDefault(stage, Instant.EPOCH));
    List<String> meters =
        used.stream().map(Reading::meter).filter(id -> !id.isEmpty()).distinct().sorted().toList();
    return new DatedOutcome(job.identity(), stage, outcome, at, meters);
  }
}
