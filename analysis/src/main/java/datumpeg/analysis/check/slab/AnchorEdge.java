package datumpeg.analysis.check.slab;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.DirectValues;
import datumpeg.analysis.check.Evidence;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.detail.Anchors;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Anchors as marked, before they are drilled: the centre of a base's anchors against its line mark
 * ({@code A3/mark}, against the plan), and the outermost anchor against the slab's edge ({@code
 * A3}, {@code A1/end}, against the least edge distance the project gives). An edge nearer than that
 * is a deviation below 0.
 *
 * <p>No edge distance is built in: the anchor maker's approval and the engineer's drawings decide.
 * Worked: a centre 139 mm in, anchors 80 mm apart across, 75 mm wanted: 139 − 40 − 75 = +24 mm.
 */
public final class AnchorEdge implements Check {
  private static final String SOURCE =
      "edge distance of the job file; the anchor maker's approval and the engineer's drawings decide";

  private final SetOut setOut;
  private final OutcomeMaker outcomes;

  public AnchorEdge(Job job, OutcomeMaker outcomes) {
    this.setOut = job.setOut();
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Reading> used = stage.where(AnchorEdge::isAnchor);
    Optional<DirectValues> direct = DirectValues.of(used, stage);
    List<Outcome> found = new ArrayList<>();
    direct.ifPresent(
        values ->
            values
                .readings()
                .forEach(
                    (name, readings) ->
                        found.add(
                            outcome(
                                readings.get(0).target(),
                                values.values().estimate(name),
                                stage.evidence(readings)))));
    return CheckResult.of(found, List.of(), used)
        .with(direct.map(DirectValues::tests).orElse(List.of()));
  }

  /** From a base's anchors to its own line mark or an edge beside it. */
  private static boolean isAnchor(Target target) {
    return target.quantity() == MeasuredQuantity.DISTANCE
        && target.first().feature().equals("anchor")
        && List.of("edge", "line").contains(target.second().feature())
        && target.first().place().equals(target.second().place());
  }

  private Outcome outcome(Target target, Estimate measured, Evidence evidence) {
    String place = target.first().place();
    double planned = setOut.nominalDistanceMetres(target.first(), target.second());
    if (target.second().feature().equals("line")) {
      return outcomes.signed(
          "anchor-edge", place + "/mark", OptionalDouble.of(planned), measured, planned, evidence);
    }
    boolean end = target.second().part().equals("end");
    String name = place + (end ? "/end" : "");
    Optional<Anchors> anchors = setOut.details().anchors();
    if (anchors.isEmpty()) {
      return outcomes.within(
          "anchor-edge", name, OptionalDouble.of(planned), measured, Optional.empty(), evidence);
    }
    double pattern = end ? anchors.get().alongMetres() : anchors.get().acrossMetres();
    return outcomes
        .within(
            "anchor-edge",
            name,
            OptionalDouble.of(anchors.get().edgeDistanceMetres()),
            measured.shifted(-pattern / 2),
            Optional.of(new Limits(OptionalDouble.of(0), OptionalDouble.empty(), SOURCE)),
            evidence)
        .withAside("the outermost anchor; nominal is the least edge distance");
  }
}
