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
  private final Datum datum;
  private final List<PlanPoint> points;

  private PlanState(Datum datum, List<PlanPoint> points) {
    this.datum = datum;
    this.points = List.copyOf(points);
  }

  /** Moves and turns the points into the datum frame; no mirroring. */
  static PlanState inDatum(String origin, String axis, List<PlanPoint> points) {
    Datum datum = new Datum(origin, axis, points.stream().map(PlanPoint::name).toList());
    PlanState given = new PlanState(datum, points);
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
    return new PlanState(datum, turned);
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
    return points.get(datum.place(name));
  }

  List<String> names() {
    return datum.names;
  }

  List<String> unknowns() {
    return datum.unknowns;
  }

  /** Point name of unknown number i. */
  String pointOf(int unknown) {
    return unknowns().get(unknown).substring(xOf("").length());
  }

  double[] values() {
    double[] values = new double[datum.unknowns.size()];
    for (int i = 0; i < points.size(); i++) {
      put(values, datum.x[i], points.get(i).xMetres());
      put(values, datum.y[i], points.get(i).yMetres());
    }
    return values;
  }

  /** The same points after adding a correction to each unknown. */
  PlanState moved(double[] corrections, double share) {
    List<PlanPoint> moved = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      PlanPoint point = points.get(i);
      moved.add(
          new PlanPoint(
              point.name(),
              point.xMetres() + share * get(corrections, datum.x[i]),
              point.yMetres() + share * get(corrections, datum.y[i])));
    }
    return new PlanState(datum, moved);
  }

  double distance(String from, String to) {
    return point(from).distanceTo(point(to));
  }

  /** Derivative of the distance between two points with respect to the unknowns. */
  double[] gradient(String from, String to) {
    double[] gradient = new double[datum.unknowns.size()];
    coefficients(from, to).forEach((unknown, value) -> put(gradient, position(unknown), value));
    return gradient;
  }

  /** That derivative by the unknowns' names, zeros left out. */
  Map<String, Double> coefficients(String from, String to) {
    int start = datum.place(from);
    int end = datum.place(to);
    double length = points.get(start).distanceTo(points.get(end));
    double cosine = (points.get(end).xMetres() - points.get(start).xMetres()) / length;
    double sine = (points.get(end).yMetres() - points.get(start).yMetres()) / length;
    Map<String, Double> coefficients = new LinkedHashMap<>();
    putUnlessZero(coefficients, datum.x[start], -cosine);
    putUnlessZero(coefficients, datum.y[start], -sine);
    putUnlessZero(coefficients, datum.x[end], cosine);
    putUnlessZero(coefficients, datum.y[end], sine);
    return coefficients;
  }

  private void putUnlessZero(Map<String, Double> coefficients, int unknown, double value) {
    if (value != 0 && unknown >= 0) {
      coefficients.put(datum.unknowns.get(unknown), value);
    }
  }

  /** Position of an unknown; −1 for a coordinate that the datum holds. */
  int position(String unknown) {
    return datum.positions.getOrDefault(unknown, -1);
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
    double turn = (isX ? point.yMetres() : -point.xMetres()) / distance(datum.origin, datum.axis);
    Map<String, Double> answers = new LinkedHashMap<>();
    answers.merge(unknown, 1.0, Double::sum);
    answers.merge(isX ? xOf(datum.origin) : yOf(datum.origin), -1.0, Double::sum);
    answers.merge(yOf(datum.axis), turn, Double::sum);
    answers.merge(yOf(datum.origin), -turn, Double::sum);
    return answers;
  }

  private static void put(double[] values, int unknown, double value) {
    if (unknown >= 0) {
      values[unknown] = value;
    }
  }

  private static double get(double[] values, int unknown) {
    return unknown < 0 ? 0 : values[unknown];
  }

  /** What stays as it is while points move: names, and which coordinate is which unknown. */
  private static final class Datum {
    private final String origin;
    private final String axis;
    private final List<String> names;
    private final List<String> unknowns;
    private final Map<String, Integer> positions = new HashMap<>();
    private final Map<String, Integer> places = new HashMap<>();
    private final int[] x;
    private final int[] y;

    Datum(String origin, String axis, List<String> names) {
      this.origin = origin;
      this.axis = axis;
      this.names = names;
      this.x = new int[names.size()];
      this.y = new int[names.size()];
      List<String> free = new ArrayList<>();
      for (int i = 0; i < x.length; i++) {
        String name = names.get(i);
        places.put(name, i);
        x[i] = name.equals(origin) ? -1 : free.size();
        if (x[i] >= 0) {
          free.add(xOf(name));
        }
        y[i] = name.equals(origin) || name.equals(axis) ? -1 : free.size();
        if (y[i] >= 0) {
          free.add(yOf(name));
        }
      }
      this.unknowns = List.copyOf(free);
      unknowns.forEach(unknown -> positions.put(unknown, positions.size()));
    }

    int place(String name) {
      Integer place = places.get(name);
      if (place == null) {
        throw new IllegalArgumentException(
            "plan: there is no point " + name + "; there are " + names);
      }
      return place;
    }
  }
}
