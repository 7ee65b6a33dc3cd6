package datumpeg.analysis.check.frame;

import datumpeg.analysis.adjust.AdjustedLevels;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.LevelledPoints;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Levels of the eaves: the spread over all that were read, highest less lowest. */
public final class EaveLevel implements Check {
  private final Job job;
  private final OutcomeMaker outcomes;

  public EaveLevel(Job job, OutcomeMaker outcomes) {
    this.job = job;
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    LevelledPoints eaves = LevelledPoints.of("the eaves", "eave", job.setOut(), stage);
    List<Outcome> found =
        eaves.levels().filter(levels -> levels.names().size() >= 2).stream()
            .map(levels -> spread(levels, eaves, stage))
            .toList();
    return new CheckResult(
        found, eaves.notes(), Map.of(), Map.of(), eaves.used(), eaves.network().stream().toList());
  }

  private Outcome spread(AdjustedLevels levels, LevelledPoints eaves, StageReadings stage) {
    Comparator<String> byLevel = Comparator.comparingDouble(name -> levels.level(name).value());
    String high = levels.names().stream().max(byLevel).orElseThrow();
    String low = levels.names().stream().min(byLevel).orElseThrow();
    return outcomes.spread(
        "eave-level",
        "eaves",
        levels.difference(low, high).value(),
        greatestUncertainty(levels) / Math.sqrt(2),
        levels.names().size(),
        job.setOut().building().lengthMetres(),
        stage.evidence(eaves.used()),
        "high " + high + ", low " + low);
  }

  private static double greatestUncertainty(AdjustedLevels levels) {
    double greatest = 0;
    for (String one : levels.names()) {
      for (String other : levels.names()) {
        if (!one.equals(other)) {
          greatest = Math.max(greatest, levels.difference(one, other).standardUncertainty());
        }
      }
    }
    return greatest;
  }
}
