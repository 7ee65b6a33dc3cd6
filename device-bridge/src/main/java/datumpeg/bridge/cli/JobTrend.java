package datumpeg.bridge.cli;

import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.RoundChange;
import datumpeg.analysis.trend.TrendFilter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** One target of a job across its stages and rounds. */
record JobTrend(List<DatedOutcome> steps) {
  JobTrend {
    steps = List.copyOf(steps);
  }

  static List<JobTrend> of(List<DatedOutcome> outcomes, TrendFilter filter) {
    Map<List<String>, List<DatedOutcome>> targets = new LinkedHashMap<>();
    outcomes.stream()
        .filter(filter::passes)
        .forEach(
            one ->
                targets
                    .computeIfAbsent(
                        List.of(one.outcome().check(), one.outcome().target()),
                        key -> new ArrayList<>())
                    .add(one));
    return targets.values().stream().map(JobTrend::new).toList();
  }

  String name() {
    return steps.get(0).outcome().check() + " " + steps.get(0).outcome().target();
  }

  /** What changed from each step to the next. */
  List<RoundChange> changes() {
    List<RoundChange> changes = new ArrayList<>();
    for (int i = 1; i < steps.size(); i++) {
      changes.add(new RoundChange(steps.get(i - 1).outcome(), steps.get(i).outcome()));
    }
    return changes;
  }
}
