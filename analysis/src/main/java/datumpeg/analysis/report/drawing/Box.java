package datumpeg.analysis.report.drawing;

/** An upright rectangle on the drawing, in drawing units. */
public record Box(double left, double top, double width, double height) {
  static Box around(Spot centre, double half) {
    return new Box(centre.x() - half, centre.y() - half, 2 * half, 2 * half);
  }

  public double right() {
    return left + width;
  }

  public double bottom() {
    return top + height;
  }

  boolean overlaps(Box other) {
    return left < other.right()
        && other.left < right()
        && top < other.bottom()
        && other.top < bottom();
  }
}
