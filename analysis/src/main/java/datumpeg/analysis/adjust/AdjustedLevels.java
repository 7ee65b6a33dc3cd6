package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireKnown;

import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.JointEstimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Adjusted levels, in metres, up positive; only their differences mean anything. Immutable. */
public final class AdjustedLevels {
  /** Levels within this are one: rounding does not choose between them. */
  private static final double SAME_METRES = 1e-9;

  private final List<PlanPoint> points;
  private final List<String> names;
  private final LevelTilts tilts;
  private final Fit fit;
  private final Map<String, Linearised> aboveFirst = new HashMap<>();

  AdjustedLevels(List<PlanPoint> points, String prefix, LevelTilts tilts, Fit fit) {
    this.points = points;
    this.names = points.stream().map(PlanPoint::name).toList();
    this.tilts = tilts;
    this.fit = fit;
    JointEstimate parameters = fit.parameters();
    for (String name : names) {
      String unknown = prefix + name;
      aboveFirst.put(
          name,
          parameters.contains(unknown) ? parameters.quantity(unknown) : parameters.constant(0));
    }
  }

  /** Observations with residuals and tests; its parameters are levels above the first point. */
  public Fit fit() {
    return fit;
  }

  /** The levelled points, in the caller's order. */
  public List<PlanPoint> points() {
    return points;
  }

  /** Names of the points, in the caller's order. */
  public List<String> names() {
    return names;
  }

  /** Level of a point relative to the mean of all points. */
  public Estimate level(String point) {
    return linearisedLevel(point).estimate();
  }

  /** As {@link #level}, to be combined with others. */
  public Linearised linearisedLevel(String point) {
    return linearisedLevel(point, names);
  }

  /** Level of a point relative to the mean of some of the points. */
  public Linearised linearisedLevel(String point, List<String> reference) {
    return aboveFirst(point)
        .minus(Linearised.mean(reference.stream().map(this::aboveFirst).toList()));
  }

  /** Level of {@code to} less that of {@code from}. */
  public Estimate difference(String from, String to) {
    return linearisedDifference(from, to).estimate();
  }

  /** As {@link #difference}, to be combined with others. */
  public Linearised linearisedDifference(String from, String to) {
    return aboveFirst(to).minus(aboveFirst(from));
  }

  /** Of at least one point, the highest; of some as high the one named first. */
  public String highest(List<String> names) {
    return outermost(names, 1);
  }

  /** Of at least one point, the lowest; of some as low the one named first. */
  public String lowest(List<String> names) {
    return outermost(names, -1);
  }

  private String outermost(List<String> names, int sign) {
    String found = names.get(0);
    for (String name : names) {
      double beyond = sign * (aboveFirst(name).value() - aboveFirst(found).value());
      found = beyond > SAME_METRES ? name : found;
    }
    return found;
  }

  /** Of at least two points, the difference whose standard uncertainty is greatest. */
  public Estimate leastCertainDifference(List<String> names) {
    List<Linearised> levels = names.stream().map(this::aboveFirst).toList();
    double greatest = -1;
    Linearised least = levels.get(0);
    for (int i = 0; i < levels.size(); i++) {
      for (int j = 0; j < i; j++) {
        double variance =
            levels.get(i).variance()
                + levels.get(j).variance()
                - 2 * levels.get(i).covarianceWith(levels.get(j));
        if (variance > greatest) {
          greatest = variance;
          least = levels.get(i).minus(levels.get(j));
        }
      }
    }
    return least.estimate();
  }

  /** Covariance of two levels relative to the mean, in square metres. */
  public double covariance(String first, String second) {
    return linearisedLevel(first).covarianceWith(linearisedLevel(second));
  }

  /** The plane that fits the levels best. */
  public Adjustment<BestPlane> bestPlane() {
    return BestPlane.fit(
        points.stream()
            .map(
                p ->
                    new SurfacePoint(p.name(), p.xMetres(), p.yMetres(), linearisedLevel(p.name())))
            .toList());
  }

  /** What a reading of a point from a set-up reads, but for that set-up's errors. */
  Linearised read(String point, String setUp) {
    return aboveFirst(point).plus(fit.parameters().quantity(LevelNetwork.SET_UP + setUp));
  }

  /** The errors of the set-ups' planes in a reading of one of the points. */
  Observation tilted(LevelReading reading) {
    return tilts.of(reading);
  }

  private Linearised aboveFirst(String point) {
    requireKnown("adjusted", "levels", point, aboveFirst.keySet());
    return Objects.requireNonNull(aboveFirst.get(point), point);
  }
}
