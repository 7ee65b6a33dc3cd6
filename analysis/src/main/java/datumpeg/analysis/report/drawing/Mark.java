package datumpeg.analysis.report.drawing;

import java.util.List;

/**
 * One thing drawn: a shape or a line of words, in drawing units. Whoever shows a drawing, on paper
 * or on a screen, draws its marks in their order.
 */
public sealed interface Mark {
  /** The size of words: nine points on paper, the least a reader should be given, and a little. */
  double FONT_SIZE = 13;

  /** A straight line. */
  record Line(Ink ink, Spot from, Spot to) implements Mark {}

  /** A closed outline. */
  record Polygon(Ink ink, List<Spot> corners) implements Mark {
    public Polygon {
      corners = List.copyOf(corners);
    }
  }

  record Rectangle(Ink ink, Box box) implements Mark {}

  record Circle(Ink ink, Spot centre, double radius) implements Mark {}

  /**
   * An ellipse.
   *
   * @param degrees its first half axis is turned so far clockwise
   */
  record Ellipse(Ink ink, Spot centre, double firstHalf, double secondHalf, double degrees)
      implements Mark {}

  /**
   * One line of words.
   *
   * @param reversed whether they are white, for a black ground
   */
  record Words(Spot baseline, Anchor anchor, boolean bold, String text, boolean reversed)
      implements Mark {}
}
