package datumpeg.analysis.measuring;

import java.util.OptionalDouble;

/**
 * One instrument, as the job describes it.
 *
 * @param id the user's name for it
 * @param quantity what it measures
 * @param accuracy in metres, or radians for a tilt meter
 * @param edgeMetres what forgetting its hook or end piece is wrong by, if the job says so
 * @param stated where the accuracy comes from, such as "job file", or the assumption made
 */
public record Meter(
    String id,
    MeasuredQuantity quantity,
    MeterAccuracy accuracy,
    OptionalDouble edgeMetres,
    String stated) {
  private static final double RADIANS_PER_DEGREE = StrictMath.PI / 180;

  /** A meter of which no hook or end piece is known. */
  public Meter(String id, MeasuredQuantity quantity, MeterAccuracy accuracy, String stated) {
    this(id, quantity, accuracy, OptionalDouble.empty(), stated);
  }

  /** A sentence on what is assumed of a meter nobody described. */
  public static String assumption(String id, MeasuredQuantity quantity) {
    String within = quantity == MeasuredQuantity.TILT ? "±0.2 deg" : "±3 mm";
    return (id.isEmpty()
            ? "Some readings name no meter: they are taken to be within "
            : "The job does not describe meter " + id + ": it is taken to be within ")
        + within
        + " (k = 2).";
  }

  /**
   * What is assumed of a meter nobody described: ±3 mm for lengths, ±0.2 deg for tilts, at coverage
   * 2 (common practice, no source: twice what such meters usually state).
   */
  public static Meter assumed(String id, MeasuredQuantity quantity) {
    String name = id.isEmpty() ? "no meter named" : "meter " + id + " not described in the job";
    return quantity == MeasuredQuantity.TILT
        ? new Meter(
            id,
            quantity,
            MeterAccuracy.ofExpanded(0.2 * RADIANS_PER_DEGREE, 2, 0.1 * RADIANS_PER_DEGREE),
            name + ": assumed ±0.2 deg (k = 2)")
        : new Meter(
            id,
            quantity,
            MeterAccuracy.ofExpanded(0.003, 2, 0.001),
            name + ": assumed ±3 mm (k = 2)");
  }
}
