package datumpeg.analysis.check.frame;

import datumpeg.analysis.adjust.AdjustedLevels;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.LevelledPoints;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.TargetWords;
import java.util.List;
import java.util.Map;
import java.util.Set;

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
    LevelledPoints eaves = LevelledPoints.of("the eaves", Set.of("eave"), job.setOut(), stage);
    List<Outcome> found =
        eaves.levels().filter(levels -> levels.names().size() >= 2).stream()
            .map(levels -> spread(levels, eaves, stage))
            .toList();
    return new CheckResult(
            found,
            eaves.notes(),
            Map.of(),
            Map.of(),
            eaves.used(),
            eaves.network().stream().toList())
        .with(eaves.test().stream().toList());
  }

  private Outcome spread(AdjustedLevels levels, LevelledPoints eaves, StageReadings stage) {
    String high = levels.highest(levels.names());
    String low = levels.lowest(levels.names());
    return outcomes.spread(
        "eave-level",
        "eaves",
        levels.difference(low, high).value(),
        levels.leastCertainDifference(levels.names()),
        levels.names().size(),
        job.setOut().building().lengthMetres(),
        stage.evidence(eaves.used()),
        "highest at "
            + TargetWords.pointNamed(high)
            + ", lowest at "
            + TargetWords.pointNamed(low));
  }
}
