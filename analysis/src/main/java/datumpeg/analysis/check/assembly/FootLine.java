package datumpeg.analysis.check.assembly;

import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.DirectValues;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Feet of a wall frame lying on the slab, against the string stretched along them: how far each is
 * beyond the string, + = away from the eave. The string is the reference; nothing is taken off the
 * readings but its stand-off.
 *
 * <p>An offset of a base is read so in stages that ask for {@code foot-line}; elsewhere it is one
 * of the standing wall, see room check.frame.
 */
public final class FootLine implements Check {
  private final Job job;
  private final OutcomeMaker outcomes;

  public FootLine(Job job, OutcomeMaker outcomes) {
    this.job = job;
    this.outcomes = outcomes;
  }

  /** Whether the stage the readings are of looks at feet on a string. */
  public static boolean isAsked(Job job, StageReadings stage) {
    return stage.all().stream()
        .findFirst()
        .flatMap(reading -> job.stage(reading.stage()))
        .filter(found -> found.checks().contains("foot-line"))
        .isPresent();
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Reading> used = isAsked(job, stage) ? stage.where(FootLine::isFoot) : List.of();
    Optional<DirectValues> direct = DirectValues.of(used, stage);
    List<Outcome> found = new ArrayList<>();
    direct.ifPresent(
        values ->
            values
                .readings()
                .forEach(
                    (name, readings) ->
                        found.add(
                            outcomes.signedWithAside(
                                "foot-line",
                                readings.get(0).target().first().place(),
                                values.values().estimate(name),
                                job.setOut().overallLengthMetres(),
                                stage.evidence(readings),
                                ""))));
    return CheckResult.of(found, List.of(), used)
        .with(direct.map(DirectValues::tests).orElse(List.of()));
  }

  private static boolean isFoot(Target target) {
    return target.quantity() == MeasuredQuantity.OFFSET && target.first().feature().equals("base");
  }
}
