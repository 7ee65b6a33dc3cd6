package datumpeg.analysis.adjust;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Coordinates of all points in the datum frame: the origin at (0, 0), the axis point at y = 0 with
 * x above 0, and their 2p - 3 unknowns. Immutable.
 */
final class PlanState {
  private final List<PlanPoint> points;
  private final Map<String, PlanPoint> byName = new HashMap<>();
  private final String origin;
  private final String axis;
  private final Map<String, Integer> unknowns = new LinkedHashMap<>();

  private PlanState(String origin, String axis, List<PlanPoint> points) {
    this.points = List.copyOf(points);
    this.origin = origin;
    this.axis = axis;
    for (PlanPoint point : points) {
      byName.put(point.name(), point);
      if (!point.name().equals(origin)) {
        unknowns.put(xOf(point.name()), unknowns.size());
        if (!point.name().equals(axis)) {
          unknowns.put(yOf(point.name()), unknowns.size());
        }
      }
    }
  }

  /** Moves and turns the points into the datum frame; no mirroring. */
  static PlanState inDatum(String origin, String axis, List<PlanPoint> points) {
    PlanState given = new PlanState(origin, axis, points);
    PlanPoint zero = given.point(origin);
    PlanPoint along = given.point(axis);
    double length = zero.distanceTo(along);
    double cosine = (along.xMetres() - zero.xMetres()) / length;
    double sine = (along.yMetres() - zero.yMetres()) / length;
    List<PlanPoint> turned = new ArrayList<>();
    for (PlanPoint point : points) {
      double dx = point.xMetres() - zero.xMetres();
      double dy = point.yMetres() - zero.yMetres();
      boolean onAxis = point.name().equals(origin) || point.name().equals(axis);
      turned.add(
          new PlanPoint(
              point.name(), cosine * dx + sine * dy, onAxis ? 0 : cosine * dy - sine * dx));
    }
    return new PlanState(origin, axis, turned);
  }

  static String xOf(String point) {
    return "x of " + point;
  }

  static String yOf(String point) {
    return "y of " + point;
  }

  List<PlanPoint> points() {
    return points;
  }

  PlanPoint point(String name) {
    PlanPoint point = byName.get(name);
    if (point == null) {
      throw new IllegalArgumentException(
          "plan: there is no point " + name + "; there are " + names());
    }
    return point;
  }

  List<String> names() {
    return points.stream().map(PlanPoint::name).toList();
  }

  List<String> unknowns() {
    return List.copyOf(unknowns.keySet());
  }

  /** Point name of unknown number i. */
  String pointOf(int unknown) {
    return unknowns().get(unknown).substring(xOf("").length());
  }

  double[] values() {
    double[] values = new double[unknowns.size()];
    for (PlanPoint point : points) {
      put(values, xOf(point.name()), point.xMetres());
      put(values, yOf(point.name()), point.yMetres());
    }
    return values;
  }

  /** The same points after adding a correction to each unknown. */
  PlanState moved(double[] corrections, double share) {
    List<PlanPoint> moved = new ArrayList<>();
    for (PlanPoint point : points) {
      moved.add(
          new PlanPoint(
              point.name(),
              point.xMetres() + share * get(corrections, xOf(point.name())),
              point.yMetres() + share * get(corrections, yOf(point.name()))));
    }
    return new PlanState(origin, axis, moved);
  }

  double distance(String from, String to) {
    return point(from).distanceTo(point(to));
  }

  /** Derivative of the distance between two points with respect to the unknowns. */
  double[] gradient(String from, String to) {
    double[] gradient = new double[unknowns.size()];
    coefficients(from, to).forEach((unknown, value) -> put(gradient, unknown, value));
    return gradient;
  }

  /** That derivative by the unknowns' names, zeros left out. */
  Map<String, Double> coefficients(String from, String to) {
    PlanPoint start = point(from);
    PlanPoint end = point(to);
    double length = start.distanceTo(end);
    double cosine = (end.xMetres() - start.xMetres()) / length;
    double sine = (end.yMetres() - start.yMetres()) / length;
    Map<String, Double> coefficients = new LinkedHashMap<>();
    putUnlessZero(coefficients, xOf(from), -cosine);
    putUnlessZero(coefficients, yOf(from), -sine);
    putUnlessZero(coefficients, xOf(to), cosine);
    putUnlessZero(coefficients, yOf(to), sine);
    return coefficients;
  }

  private void putUnlessZero(Map<String, Double> coefficients, String unknown, double value) {
    if (value != 0 && unknowns.containsKey(unknown)) {
      coefficients.put(unknown, value);
    }
  }

  /** Position of an unknown; −1 for a coordinate that the datum holds. */
  int position(String unknown) {
    return unknowns.getOrDefault(unknown, -1);
  }

  /** The observed distances as a linear model of corrections to the unknowns. */
  LinearModel linearised(List<MeasuredDistance> distances) {
    List<String> names = unknowns();
    List<ObservationEquation> equations = new ArrayList<>();
    for (MeasuredDistance measured : distances) {
      equations.add(
          new ObservationEquation(
              measured.observation(),
              coefficients(measured.from(), measured.to()),
              distance(measured.from(), measured.to())));
    }
    return new LinearModel(names, equations);
  }

  /**
   * What marks beside their points add to the points' coordinates: S D, of which S D D S' is the
   * covariance, with D the marks' own standard deviations and S carrying them into the frame of the
   * points, in which origin and axis point are themselves points (W. Baarda, S-transformations,
   * 1973, recalled). A row for each unknown.
   */
  double[][] marksBesideTheirPoints(Map<String, Double> definitionsMetres) {
    List<Map<String, Double>> rows = unknowns().stream().map(this::answerToMarks).toList();
    List<String> errors = rows.stream().flatMap(row -> row.keySet().stream()).distinct().toList();
    double[][] root = new double[rows.size()][errors.size()];
    for (int i = 0; i < root.length; i++) {
      for (int k = 0; k < errors.size(); k++) {
        String error = errors.get(k);
        root[i][k] =
            rows.get(i).getOrDefault(error, 0.0)
                * definitionsMetres.getOrDefault(error.substring(xOf("").length()), 0.0);
      }
    }
    return root;
  }

  /** How a coordinate answers to marks moving: shift with the origin, turn with the axis point. */
  private Map<String, Double> answerToMarks(String unknown) {
    PlanPoint point = point(unknown.substring(xOf("").length()));
    boolean isX = unknown.equals(xOf(point.name()));
    double turn = (isX ? point.yMetres() : -point.xMetres()) / distance(origin, axis);
    Map<String, Double> answers = new LinkedHashMap<>();
    answers.merge(unknown, 1.0, Double::sum);
    answers.merge(isX ? xOf(origin) : yOf(origin), -1.0, Double::sum);
    answers.merge(yOf(axis), turn, Double::sum);
    answers.merge(yOf(origin), -turn, Double::sum);
    return answers;
  }

  private void put(double[] values, String unknown, double value) {
    Integer position = unknowns.get(unknown);
    if (position != null) {
      values[position] = value;
    }
  }

  private double get(double[] values, String unknown) {
    Integer position = unknowns.get(unknown);
    return position == null ? 0 : values[position];
  }
}
