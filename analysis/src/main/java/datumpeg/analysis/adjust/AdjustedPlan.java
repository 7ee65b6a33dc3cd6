package datumpeg.analysis.adjust;

import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.JointEstimate;
import datumpeg.analysis.uncertainty.Linearised;
import datumpeg.analysis.uncertainty.Origin;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The points of an adjusted distance network and whatever follows from them. Immutable. */
public final class AdjustedPlan {
  private final PlanState state;
  private final Fit fit;
  private final List<MeasuredDistance> distances;
  private final JointEstimate coordinates;

  private AdjustedPlan(
      PlanState state, Fit fit, List<MeasuredDistance> distances, JointEstimate coordinates) {
    this.state = state;
    this.fit = fit;
    this.distances = distances;
    this.coordinates = coordinates;
  }

  static AdjustedPlan of(
      PlanState state,
      Fit fit,
      List<MeasuredDistance> distances,
      Map<String, Double> definitionsMetres) {
    boolean exact = definitionsMetres.values().stream().allMatch(definition -> definition == 0);
    JointEstimate marks = fit.parameters();
    return new AdjustedPlan(
        state,
        fit,
        distances,
        exact
            ? marks
            : marks.widened(state.marksBesideTheirPoints(definitionsMetres), Origin.DEFINITION));
  }

  /** The same plan of the marks alone, as readings know them. */
  AdjustedPlan marks() {
    return new AdjustedPlan(state, fit, distances, fit.parameters());
  }

  /**
   * Observations with residuals and tests; its parameters are the free coordinates of the marks.
   */
  public Fit fit() {
    return fit;
  }

  /** The distances that were adjusted, in the caller's order. */
  public List<MeasuredDistance> distances() {
    return distances;
  }

  /** Names of the points, in the caller's order. */
  public List<String> names() {
    return state.names();
  }

  /** All points, in the caller's order. */
  public List<AdjustedPoint> points() {
    return names().stream().map(this::point).toList();
  }

  /** One point. */
  public AdjustedPoint point(String name) {
    Linearised x = x(name);
    Linearised y = y(name);
    return new AdjustedPoint(
        name,
        x.value(),
        y.value(),
        x.estimate().standardUncertainty(),
        y.estimate().standardUncertainty(),
        x.covarianceWith(y));
  }

  /** x in metres, for formulas of one's own. */
  public Linearised x(String name) {
    return coordinate(PlanState.xOf(name), state.point(name).xMetres());
  }

  /** y in metres, for formulas of one's own. */
  public Linearised y(String name) {
    return coordinate(PlanState.yOf(name), state.point(name).yMetres());
  }

  private Linearised coordinate(String unknown, double fixed) {
    return coordinates.contains(unknown)
        ? coordinates.quantity(unknown)
        : coordinates.constant(fixed);
  }

  /** Adjusted distance in metres, also between points that were not measured. */
  public Estimate distance(String from, String to) {
    return linearisedDistance(from, to).estimate();
  }

  Map<String, Double> coefficients(String from, String to) {
    return state.coefficients(from, to);
  }

  double apartMetres(String from, String to) {
    return state.distance(from, to);
  }

  /** Adjusted distance in metres, to be combined with others. */
  public Linearised linearisedDistance(String from, String to) {
    Linearised dx = x(to).minus(x(from));
    Linearised dy = y(to).minus(y(from));
    return dx.times(dx).plus(dy.times(dy)).squareRoot();
  }

  /**
   * Angle at a point, turned anticlockwise from the direction of one point to that of another, in
   * [0, 2 pi) radians. Walking round a figure anticlockwise, the interior angle at a corner is
   * {@code angle(corner, next, previous)}.
   */
  public Estimate angle(String at, String from, String to) {
    return linearisedAngle(at, from, to).estimate();
  }

  /** As {@link #angle}, to be combined with others. */
  public Linearised linearisedAngle(String at, String from, String to) {
    Linearised fromX = x(from).minus(x(at));
    Linearised fromY = y(from).minus(y(at));
    Linearised toX = x(to).minus(x(at));
    Linearised toY = y(to).minus(y(at));
    Linearised cross = fromX.times(toY).minus(fromY.times(toX));
    Linearised dot = fromX.times(toX).plus(fromY.times(toY));
    Linearised turned = Linearised.direction(cross, dot);
    return turned.value() < 0 ? turned.shifted(2 * Math.PI) : turned;
  }

  /** Distance of a point from the line through two others, in metres, positive on its left. */
  public Linearised offset(String point, String lineFrom, String lineTo) {
    Linearised dx = x(lineTo).minus(x(lineFrom));
    Linearised dy = y(lineTo).minus(y(lineFrom));
    Linearised px = x(point).minus(x(lineFrom));
    Linearised py = y(point).minus(y(lineFrom));
    return dx.times(py).minus(dy.times(px)).dividedBy(linearisedDistance(lineFrom, lineTo));
  }

  /** Parts of the figure that fit as well the other way up, and nearly in the same place. */
  public List<MirrorAmbiguity> mirrorAmbiguities() {
    return new MirrorImages(this).find();
  }

  /** The distance not taken yet that would best check those no other distance checks. */
  public Optional<PointPair> suggestedCheck() {
    return MissingDistances.toCheck(marks());
  }

  /**
   * Points held so loosely across a distance that the second-order lengthening, u^2 / (2 d),
   * exceeds that distance's uncertainty: there the first-order result means nothing.
   */
  List<String> weakPoints() {
    Set<String> weak = new LinkedHashSet<>();
    for (MeasuredDistance taken : distances) {
      double length = state.distance(taken.from(), taken.to());
      double across = acrossVariance(taken.from(), taken.to());
      if (across / (2 * length) > taken.observation().standardUncertainty()) {
        weak.add(spread(taken.from()) > spread(taken.to()) ? taken.from() : taken.to());
      }
    }
    List<String> ordered = new ArrayList<>(names());
    ordered.retainAll(weak);
    return ordered;
  }

  private double acrossVariance(String from, String to) {
    Linearised dx = x(to).minus(x(from));
    Linearised dy = y(to).minus(y(from));
    double length = state.distance(from, to);
    return dy.scaled(dx.value() / length).minus(dx.scaled(dy.value() / length)).variance();
  }

  private double spread(String name) {
    return x(name).variance() + y(name).variance();
  }
}
