package datumpeg.analysis.report.drawing;

import datumpeg.analysis.report.writing.Markup;

/**
 * A finished drawing.
 *
 * @param title what it shows
 * @param picture the drawing itself
 * @param caption how to read it
 */
public record Drawing(String title, Picture picture, String caption) {
  static final double PAGE_WIDTH = 720;

  /** The drawing as an SVG element. */
  public Markup svg() {
    return picture.svg();
  }
}
