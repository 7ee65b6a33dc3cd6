package datumpeg.desktop.trend;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.desktop.source.ReducedJob;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * The outcomes of one check of one target, in the order of the work: stage by stage, in each stage
 * round by round.
 */
record TrendSeries(String check, String target, List<Step> steps) {
  TrendSeries {
    steps = List.copyOf(steps);
  }

  /** One outcome and where in the work it belongs. */
  record Step(String stage, Outcome outcome) {}

  /** Every series of the job, in the order in which checks and targets first appear. */
  static List<TrendSeries> allOf(ReducedJob work) {
    Map<Key, TrendSeries> series = new LinkedHashMap<>();
    for (Stage stage : work.job().stages()) {
      roundsOf(stage.id(), work)
          .forEach(
              (key, rounds) -> {
                List<Step> steps = new ArrayList<>();
                if (series.containsKey(key)) {
                  steps.addAll(series.get(key).steps());
                }
                rounds.values().forEach(outcome -> steps.add(new Step(stage.id(), outcome)));
                series.put(key, new TrendSeries(key.check(), key.target(), steps));
              });
    }
    return List.copyOf(series.values());
  }

  /** By check and target the outcomes of a stage by round; what was found last counts. */
  private static Map<Key, Map<Integer, Outcome>> roundsOf(String stage, ReducedJob work) {
    List<Findings> inTime = new ArrayList<>(work.earlier());
    inTime.add(work.findings());
    Map<Key, Map<Integer, Outcome>> rounds = new LinkedHashMap<>();
    for (Findings findings : inTime) {
      List<Outcome> outcomes = findings.stage(stage).map(StageFindings::outcomes).orElse(List.of());
      for (Outcome outcome : outcomes) {
        rounds
            .computeIfAbsent(new Key(outcome.check(), outcome.target()), key -> new TreeMap<>())
            .put(outcome.round(), outcome);
      }
    }
    return rounds;
  }

  /** The stages it was measured in. */
  Set<String> stages() {
    Set<String> stages = new LinkedHashSet<>();
    steps.forEach(step -> stages.add(step.stage()));
    return stages;
  }

  /** What was found last. */
  Outcome last() {
    return steps.get(steps.size() - 1).outcome();
  }

  private record Key(String check, String target) {}
}
