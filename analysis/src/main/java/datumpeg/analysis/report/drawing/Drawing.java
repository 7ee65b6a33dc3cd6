package datumpeg.analysis.report.drawing;

import datumpeg.analysis.report.writing.Markup;

/**
 * A finished drawing.
 *
 * @param title what it shows
 * @param svg the drawing itself
 * @param caption how to read it
 */
public record Drawing(String title, Markup svg, String caption) {
  static final double PAGE_WIDTH = 720;
}
