package datumpeg.desktop.chart;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.text.Standing;

/** What a chart is drawn with: lines, blocks, letters and marks, in pixels from the top left. */
public interface Pen {
  /** Where a text stands from its place. */
  enum Align {
    LEFT,
    MIDDLE,
    RIGHT
  }

  /** How heavy letters are. */
  enum Weight {
    PLAIN,
    BOLD
  }

  double width();

  double height();

  /** So many times the height of plain text. */
  double em(double times);

  void line(double x1, double y1, double x2, double y2, Ink ink, double thickness);

  void dashes(double x1, double y1, double x2, double y2, Ink ink, double thickness);

  void block(double x, double y, double blockWidth, double blockHeight, Ink ink);

  /** Plain letters, their middle at y. */
  void text(String text, double x, double y, Ink ink, Align align);

  /** Letters from x to the right, their middle at y, narrowed where they would be too wide. */
  void words(String text, double x, double y, Ink ink, Weight weight, double widest);

  /** Plain letters around x, their middle at y, narrowed where they would be too wide. */
  void label(String text, double x, double y, Ink ink, double widest);

  /** The shape of a standing in its own ink, its middle at a place. */
  void standing(Standing standing, double x, double y, double size);

  void mark(Mark mark, double x, double y, double size, Ink ink);
}
