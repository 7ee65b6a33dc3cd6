package datumpeg.analysis.check.assembly;

import datumpeg.analysis.adjust.AdjustedPlan;
import datumpeg.analysis.adjust.PlanPoint;
import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
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
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Rack of a wall frame lying on the slab, at the eave; + = the eave toward end n.
 *
 * <p>Of a parallelogram with diagonals d₁ (from the foot at end 1) and d₂ and sides a along: r =
 * (d₁² − d₂²)/(4a), near d·(d₁ − d₂)/(2a) (law of cosines for both diagonals). It holds only if
 * opposite sides agree, so that is looked at first; where they do not, the rack is that of the
 * adjusted quadrilateral: the mean shift of its eave corners along the foot line. Worked: 12 m by 9
 * m with diagonals of 15.005 and 14.995 m racks 6.25 mm.
 */
public final class WallSquare implements Check {
  private final SetOut setOut;
  private final OutcomeMaker outcomes;

  public WallSquare(Job job, OutcomeMaker outcomes) {
    this.setOut = job.setOut();
    this.outcomes = outcomes;
  }

  /** The four corners of one wall frame. */
  private record Frame(PointName foot1, PointName footN, PointName eaveN, PointName eave1) {
    List<PointName> around() {
      return List.of(foot1, footN, eaveN, eave1);
    }

    boolean holds(Target target) {
      return target.quantity() == MeasuredQuantity.DISTANCE
          && around().containsAll(target.points());
    }

    Target foot() {
      return Target.distance(foot1, footN);
    }

    Target eave() {
      return Target.distance(eave1, eaveN);
    }

    Target end1() {
      return Target.distance(foot1, eave1);
    }

    Target endN() {
      return Target.distance(footN, eaveN);
    }

    Target rising() {
      return Target.distance(foot1, eaveN);
    }

    Target falling() {
      return Target.distance(footN, eave1);
    }
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    List<Note> notes = new ArrayList<>();
    List<AgreementTest> tests = new ArrayList<>();
    List<Reading> used = new ArrayList<>();
    List<Network> networks = new ArrayList<>();
    for (char side : new char[] {'A', 'B'}) {
      Frame frame = frame(side);
      List<Reading> readings = stage.where(frame::holds);
      used.addAll(readings);
      FourCorners.of("wall frame " + side, corners(frame), readings, stage)
          .ifPresent(
              figure -> {
                notes.addAll(figure.notes());
                tests.addAll(figure.tests());
                figure.network().ifPresent(networks::add);
                outcome(side, frame, figure, stage).ifPresent(found::add);
              });
    }
    return new CheckResult(found, notes, Map.of(), Map.of(), used, networks).with(tests);
  }

  private Frame frame(char side) {
    String first = new GridMark(side, 1).text();
    String last = new GridMark(side, setOut.building().portalFrameCount()).text();
    return new Frame(
        new PointName("wall", first, "foot"),
        new PointName("wall", last, "foot"),
        new PointName("wall", last, "eave"),
        new PointName("wall", first, "eave"));
  }

  /** In the frame's own plane: along the foot, and up it. */
  private List<PlanPoint> corners(Frame frame) {
    return frame.around().stream()
        .map(
            point -> {
              Position place = setOut.position(point);
              return new PlanPoint(point.text(), place.xMetres(), place.zMetres());
            })
        .toList();
  }

  private Optional<Outcome> outcome(
      char side, Frame frame, FourCorners figure, StageReadings stage) {
    boolean diagonals = figure.has(frame.rising()) && figure.has(frame.falling());
    boolean agree =
        agree(figure, frame.foot(), frame.eave(), stage)
            && agree(figure, frame.end1(), frame.endN(), stage);
    if (diagonals && agree) {
      return Optional.of(
          outcome(
              side,
              byDiagonals(figure, frame),
              figure,
              "opposite sides agree: from the diagonals; right when both read "
                  + squareDiagonal(figure, frame),
              stage));
    }
    return figure
        .plan()
        .map(
            plan ->
                outcome(
                    side,
                    byCorners(plan, figure, frame),
                    figure,
                    (diagonals
                            ? "opposite sides differ or were not all read"
                            : "not both diagonals")
                        + ": from the adjusted corners",
                    stage));
  }

  /**
   * Whether both were read and differ by no more than two single readings may: a threshold that
   * more readings do not tighten, so that they never change the formula to the less certain one.
   */
  private static boolean agree(FourCorners figure, Target one, Target other, StageReadings stage) {
    if (!figure.has(one) || !figure.has(other)) {
      return false;
    }
    double single =
        figure.direct().readingsOf(List.of(one.text(), other.text())).stream()
            .mapToDouble(reading -> single(reading, stage))
            .max()
            .orElse(0);
    double difference = figure.observed(one).value() - figure.observed(other).value();
    return Math.abs(difference) <= Estimate.COVERAGE_FACTOR * Math.sqrt(2) * single;
  }

  private static double single(Reading reading, StageReadings stage) {
    return Estimate.combine(
        stage.observation(reading).standardUncertainty(),
        stage.definitionMetres(reading.target().first()),
        stage.definitionMetres(reading.target().second()));
  }

  private Linearised byDiagonals(FourCorners figure, Frame frame) {
    Linearised rising = figure.observed(frame.rising());
    Linearised falling = figure.observed(frame.falling());
    Linearised along = figure.observed(frame.foot()).plus(figure.observed(frame.eave()));
    double rack =
        rising.times(rising).minus(falling.times(falling)).dividedBy(along.scaled(2)).value();
    return at(rack, difference(figure, frame.rising(), frame.falling()));
  }

  /**
   * A difference of two like distances, weighted as it enters 4·a·r = d₁² − d₂² + e₁² − eₙ² at the
   * planned sizes: so weighted, an uncertainty does not hang on the values read.
   */
  private Linearised difference(FourCorners figure, Target one, Target other) {
    double length = setOut.nominalDistanceMetres(one.first(), one.second());
    return figure
        .observed(one)
        .minus(figure.observed(other))
        .scaled(length / (2 * setOut.overallLengthMetres()));
  }

  private static Linearised at(double value, Linearised uncertain) {
    return uncertain.shifted(value - uncertain.value());
  }

  /** Both diagonals of the same sides without rack: the sum of their squares stays. */
  private static String squareDiagonal(FourCorners figure, Frame frame) {
    double rising = figure.observed(frame.rising()).value();
    double falling = figure.observed(frame.falling()).value();
    double square = Math.sqrt((rising * rising + falling * falling) / 2);
    return LengthDisplay.decimal(square * 1000, 1) + " mm";
  }

  /** Uncertain as the diagonals and ends observed make it, where all four were read. */
  private Linearised byCorners(AdjustedPlan plan, FourCorners figure, Frame frame) {
    Linearised rack = meanShift(plan, frame);
    boolean all =
        List.of(frame.rising(), frame.falling(), frame.end1(), frame.endN()).stream()
            .allMatch(figure::has);
    return all
        ? at(
            rack.value(),
            difference(figure, frame.rising(), frame.falling())
                .plus(difference(figure, frame.end1(), frame.endN())))
        : rack;
  }

  private static Linearised meanShift(AdjustedPlan plan, Frame frame) {
    Linearised atOne = plan.x(frame.eave1().text()).minus(plan.x(frame.foot1().text()));
    Linearised atN = plan.x(frame.eaveN().text()).minus(plan.x(frame.footN().text()));
    return atOne.plus(atN).scaled(0.5);
  }

  private Outcome outcome(
      char side, Linearised rack, FourCorners figure, String aside, StageReadings stage) {
    return outcomes.signedWithAside(
        "wall-square",
        Character.toString(side),
        rack.estimate(),
        setOut.building().eaveHeightMetres(),
        stage.evidence(figure.used()),
        aside);
  }
}
