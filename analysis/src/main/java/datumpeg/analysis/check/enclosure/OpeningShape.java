package datumpeg.analysis.check.enclosure;

import datumpeg.analysis.adjust.PlanPoint;
import datumpeg.analysis.building.Opening;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.AgreementTest;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.FourCorners;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Width of an opening at foot and head, its height at both posts, and the difference of its
 * diagonals: + = the head is pushed to the right, as seen from outside.
 *
 * <p>Sides are adjusted where the distances fix the figure, else as observed; the diagonals are
 * always as observed, and what one meter does to both cancels. Worked: an opening of 2880 by 3000
 * mm has diagonals of 4158.7 mm.
 */
public final class OpeningShape implements Check {
  private static final List<String> PARTS =
      List.of("left-foot", "right-foot", "right-head", "left-head");

  private final SetOut setOut;
  private final OutcomeMaker outcomes;

  public OpeningShape(Job job, OutcomeMaker outcomes) {
    this.setOut = job.setOut();
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    List<Note> notes = new ArrayList<>();
    List<AgreementTest> tests = new ArrayList<>();
    List<Reading> used = new ArrayList<>();
    List<Network> networks = new ArrayList<>();
    for (Opening opening : setOut.openings()) {
      List<Reading> readings = stage.where(target -> isOf(opening, target));
      used.addAll(readings);
      FourCorners.of("opening " + opening.id(), corners(opening), readings, stage)
          .ifPresent(
              figure -> {
                notes.addAll(figure.notes());
                tests.addAll(figure.tests());
                figure.network().ifPresent(networks::add);
                found.addAll(outcomes(opening, figure, stage));
              });
    }
    return new CheckResult(found, notes, Map.of(), Map.of(), used, networks).with(tests);
  }

  private static boolean isOf(Opening opening, Target target) {
    return target.quantity() == MeasuredQuantity.DISTANCE
        && target.points().stream()
            .allMatch(
                point ->
                    point.feature().equals("opening")
                        && point.place().equals(opening.id())
                        && PARTS.contains(point.part()));
  }

  private static PointName corner(Opening opening, String part) {
    return new PointName("opening", opening.id(), part);
  }

  /** As seen from outside: to the right, and up. */
  private static List<PlanPoint> corners(Opening opening) {
    return PARTS.stream()
        .map(
            part ->
                new PlanPoint(
                    corner(opening, part).text(),
                    part.startsWith("left") ? 0 : opening.widthMetres(),
                    part.endsWith("foot") ? 0 : opening.heightMetres()))
        .toList();
  }

  private static Target between(Opening opening, String one, String other) {
    return Target.distance(corner(opening, one), corner(opening, other));
  }

  private List<Outcome> outcomes(Opening opening, FourCorners figure, StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    double width = opening.widthMetres();
    double height = opening.heightMetres();
    side(opening, "foot", between(opening, "left-foot", "right-foot"), width, figure, stage, found);
    side(opening, "head", between(opening, "left-head", "right-head"), width, figure, stage, found);
    side(opening, "left", between(opening, "left-foot", "left-head"), height, figure, stage, found);
    side(
        opening,
        "right",
        between(opening, "right-foot", "right-head"),
        height,
        figure,
        stage,
        found);
    Target rising = between(opening, "left-foot", "right-head");
    Target falling = between(opening, "right-foot", "left-head");
    if (figure.has(rising) && figure.has(falling)) {
      Estimate difference = figure.observed(rising).minus(figure.observed(falling)).estimate();
      found.add(
          outcomes.signedWithAside(
              "opening",
              opening.id() + "/diagonals",
              difference,
              Math.sqrt(width * width + height * height),
              stage.evidence(figure.direct().readingsOf(List.of(rising.text(), falling.text()))),
              "head pushed to the right, seen from outside, is +"));
    }
    return found;
  }

  private void side(
      Opening opening,
      String name,
      Target target,
      double nominalMetres,
      FourCorners figure,
      StageReadings stage,
      List<Outcome> found) {
    figure
        .best(target)
        .ifPresent(
            length ->
                found.add(
                    outcomes.signed(
                        "opening",
                        opening.id() + "/" + name,
                        OptionalDouble.of(nominalMetres),
                        length.estimate(),
                        nominalMetres,
                        stage.evidence(figure.used()))));
  }
}
