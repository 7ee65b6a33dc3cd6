package datumpeg.analysis.report.drawing;

/** A place on the drawing, in drawing units: x to the right, y down. */
public record Spot(double x, double y) {
  Spot moved(double right, double down) {
    return new Spot(x + right, y + down);
  }
}
