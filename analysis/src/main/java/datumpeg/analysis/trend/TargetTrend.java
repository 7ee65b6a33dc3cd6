package datumpeg.analysis.trend;

import datumpeg.analysis.conform.Outcome;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The outcomes of one check of one target of a job, in the order of the work: stage by stage, in
 * each stage round by round. Never empty.
 */
public record TargetTrend(List<DatedOutcome> steps) {
  public TargetTrend {
    steps = List.copyOf(steps);
    if (steps.isEmpty()) {
      throw new IllegalArgumentException("a trend of a target has at least one outcome");
    }
  }

  /**
   * Every target's, in the order in which checks and targets first appear.
   *
   * @param outcomes of one job, in the order of its work
   */
  public static List<TargetTrend> allOf(List<DatedOutcome> outcomes) {
    Map<List<String>, List<DatedOutcome>> targets = new LinkedHashMap<>();
    for (DatedOutcome one : outcomes) {
      List<String> key = List.of(one.outcome().check(), one.outcome().target());
      targets.computeIfAbsent(key, fresh -> new ArrayList<>()).add(one);
    }
    return targets.values().stream().map(TargetTrend::new).toList();
  }

  public String check() {
    return last().check();
  }

  public String target() {
    return last().target();
  }

  /** What was found last. */
  public Outcome last() {
    return steps.get(steps.size() - 1).outcome();
  }

  /** What changed from each step to the next. */
  public List<RoundChange> changes() {
    List<RoundChange> changes = new ArrayList<>();
    for (int i = 1; i < steps.size(); i++) {
      changes.add(new RoundChange(steps.get(i - 1).outcome(), steps.get(i).outcome()));
    }
    return changes;
  }
}
