package datumpeg.analysis.report.drawing;

import datumpeg.analysis.report.writing.Markup;
import java.util.List;

/**
 * A drawing as its marks. Immutable.
 *
 * @param width in drawing units
 * @param top the least y
 * @param height from there down
 * @param description the drawing in a few words
 */
public record Picture(
    double width, double top, double height, String description, List<Mark> marks) {
  public Picture {
    marks = List.copyOf(marks);
  }

  /** The drawing as an SVG element. */
  public Markup svg() {
    return new SvgWriter().write(this);
  }
}
