package datumpeg.analysis.check.enclosure;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.DirectValues;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.check.SteepTilts;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Origin;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Lean of end-wall posts and of the posts of openings over their height: H·tan θ, with a bow of
 * H/1000 taken into account as for columns (see {@link datumpeg.analysis.check.frame.ColumnPlumb}).
 * All tilts of a session are adjusted together, columns included, so that a column read on two
 * faces frees a post read on one from the meter's zero error. Worked: 0.25 deg over a post of 4 m
 * is 4000 · tan 0.25° = 17.453 mm.
 */
public final class PostPlumb implements Check {
  /** Greatest bow of a post as a share of its height (common practice, no source). */
  private static final double BOW = 1e-3;

  private final SetOut setOut;
  private final OutcomeMaker outcomes;

  public PostPlumb(Job job, OutcomeMaker outcomes) {
    this.setOut = job.setOut();
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Reading> posts = stage.where(PostPlumb::isPost);
    if (posts.isEmpty()) {
      return CheckResult.of(List.of(), List.of(), List.of());
    }
    List<Reading> tilts = stage.where(target -> target.quantity() == MeasuredQuantity.TILT);
    Optional<DirectValues> direct = DirectValues.of(tilts, stage);
    List<Outcome> found = new ArrayList<>();
    direct.ifPresent(
        values ->
            values
                .readings()
                .forEach(
                    (text, readings) -> {
                      if (isPost(readings.get(0).target())) {
                        found.add(lean(text, values, readings, stage));
                      }
                    }));
    // the columns' own check tests the others
    return CheckResult.of(found, SteepTilts.of(posts), posts)
        .with(DirectValues.of(posts, stage).map(DirectValues::tests).orElse(List.of()));
  }

  private static boolean isPost(Target target) {
    return target.quantity() == MeasuredQuantity.TILT && !target.first().feature().equals("column");
  }

  private Outcome lean(
      String text, DirectValues values, List<Reading> readings, StageReadings stage) {
    Target target = readings.get(0).target();
    boolean mullion = target.first().feature().equals("mullion");
    double height = setOut.postHeightMetres(target.first());
    double off =
        readings.stream()
            .mapToDouble(r -> Math.abs(1 - 2 * r.upMetres().orElse(height / 2) / height))
            .average()
            .orElse(0);
    Estimate lean =
        values
            .values()
            .quantity(text)
            .tangent()
            .scaled(height)
            .estimate()
            .widened(4 * BOW * height * off / Math.sqrt(3), Origin.FORM);
    return outcomes.signedWithAside(
        mullion ? "mullion-plumb" : "opening",
        text.substring(text.indexOf('.') + 1),
        lean,
        height,
        stage.evidence(readings),
        "");
  }
}
