package datumpeg.analysis.detail;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * How the slab's flatness is read.
 *
 * @param straightedgeMetres length of the straightedge, or distance of the two high points it rests
 *     on: the size a limit works on
 * @param spacingMetres nominal spacing of the straightedge's places, if they are to be listed
 * @param stepMetres from point to point of a profile: 0.300 or 0.3048
 * @param lines profiles by name
 * @param leastFlatness least FF the project specifies, if any
 * @param leastLevelness least FL the project specifies, if any
 */
public record FlatnessPlan(
    double straightedgeMetres,
    OptionalDouble spacingMetres,
    double stepMetres,
    Map<String, Line> lines,
    OptionalDouble leastFlatness,
    OptionalDouble leastLevelness) {
  /** Straightedge where the project gives none (common practice, no source). */
  public static final double USUAL_STRAIGHTEDGE_METRES = 3;

  /** The step of a metric profile. */
  public static final double METRIC_STEP_METRES = 0.3;

  /** The step of a profile in feet: 12 in. */
  public static final double FOOT_STEP_METRES = 0.3048;

  /** Where the project gives nothing: a straightedge alone. */
  public static final FlatnessPlan USUAL =
      new FlatnessPlan(
          USUAL_STRAIGHTEDGE_METRES,
          OptionalDouble.empty(),
          METRIC_STEP_METRES,
          Map.of(),
          OptionalDouble.empty(),
          OptionalDouble.empty());

  private static final double ROUNDING = 1e-9;

  /**
   * @throws IllegalArgumentException for a length that is not positive
   */
  public FlatnessPlan {
    lines = Collections.unmodifiableMap(new LinkedHashMap<>(lines));
    if (!(straightedgeMetres > 0) || !(stepMetres > 0) || !(spacingMetres.orElse(1) > 0)) {
      throw new IllegalArgumentException(
          "Flatness is read with a straightedge of "
              + straightedgeMetres
              + " m and a step of "
              + stepMetres
              + " m; expected both to be more than 0.");
    }
  }

  /**
   * A profile: a straight line on the slab.
   *
   * @param fromX along, in metres
   * @param fromY across, in metres
   */
  public record Line(double fromX, double fromY, double toX, double toY) {
    public double lengthMetres() {
      double dx = toX - fromX;
      double dy = toY - fromY;
      return Math.sqrt(dx * dx + dy * dy);
    }
  }

  /** Distances along a profile at which its points stand, from 0 by the step. */
  public List<Double> stationsMetres(Line line) {
    List<Double> stations = new ArrayList<>();
    for (int i = 0; i * stepMetres <= line.lengthMetres() + ROUNDING; i++) {
      stations.add(i * stepMetres);
    }
    return List.copyOf(stations);
  }
}
