package datumpeg.analysis.report.drawing;

import java.util.ArrayList;
import java.util.List;

/**
 * A drawing in the making: as wide as it is told, as high as what is drawn on it. Words never go
 * beyond its sides. One thread.
 */
final class Sketch {
  static final double FONT_SIZE = Mark.FONT_SIZE;

  static final double LINE_HEIGHT = 15;
  private static final double MARGIN = 6;

  /** Of a sans-serif letter on average, rounded up so that a box is never too small. */
  private static final double LETTER_WIDTH = 0.57 * FONT_SIZE;

  private static final double BOLD_LETTER_WIDTH = 0.62 * FONT_SIZE;

  private final double width;
  private final String description;
  private final List<Mark> marks = new ArrayList<>();
  private final List<Box> words = new ArrayList<>();
  private double top = Double.POSITIVE_INFINITY;
  private double bottom = Double.NEGATIVE_INFINITY;

  Sketch(double width, String description) {
    this.width = width;
    this.description = description;
  }

  double width() {
    return width;
  }

  /** The lowest edge of what was drawn so far. */
  double bottom() {
    return bottom;
  }

  void line(Ink ink, Spot from, Spot to) {
    reach(from.y());
    reach(to.y());
    marks.add(new Mark.Line(ink, from, to));
  }

  void polygon(Ink ink, List<Spot> corners) {
    corners.forEach(corner -> reach(corner.y()));
    marks.add(new Mark.Polygon(ink, corners));
  }

  void rectangle(Ink ink, Box box) {
    reach(box.top());
    reach(box.bottom());
    marks.add(new Mark.Rectangle(ink, box));
  }

  void circle(Ink ink, Spot centre, double radius) {
    reach(centre.y() - radius);
    reach(centre.y() + radius);
    marks.add(new Mark.Circle(ink, centre, radius));
  }

  /** An ellipse whose first half axis is turned clockwise on the paper. */
  void ellipse(Ink ink, Spot centre, double firstHalf, double secondHalf, double degrees) {
    double half = Math.max(firstHalf, secondHalf);
    reach(centre.y() - half);
    reach(centre.y() + half);
    marks.add(new Mark.Ellipse(ink, centre, firstHalf, secondHalf, degrees));
  }

  /** A shaft with a filled head whose tip is at the end; nothing if it has no length. */
  void arrow(Spot from, Spot to) {
    double length = StrictMath.hypot(to.x() - from.x(), to.y() - from.y());
    if (length < 0.5) {
      return;
    }
    double ux = (to.x() - from.x()) / length;
    double uy = (to.y() - from.y()) / length;
    double head = Math.min(11, length);
    Spot neck = new Spot(to.x() - head * ux, to.y() - head * uy);
    line(Ink.FOUND, from, neck);
    double half = head * 0.45;
    polygon(
        Ink.SOLID,
        List.of(to, neck.moved(-half * uy, half * ux), neck.moved(half * uy, -half * ux)));
  }

  /** One line of words on a white ground; moved sideways where it would leave the drawing. */
  void words(Spot baseline, Anchor anchor, Weight weight, String words) {
    Box box = inside(box(baseline, anchor, weight, words));
    rectangle(Ink.BLANK, box);
    this.words.add(box);
    double moved = box.left() - box(baseline, anchor, weight, words).left();
    write(baseline.moved(moved, 0), anchor, weight, words, false);
  }

  /** White words, for a black ground. */
  void reversedWords(Spot baseline, String words) {
    write(baseline, Anchor.MIDDLE, Weight.BOLD, words, true);
  }

  /** Words without a ground of their own. */
  void bareWords(Spot baseline, Anchor anchor, Weight weight, String words) {
    write(baseline, anchor, weight, words, false);
  }

  /** The room a line of words takes. */
  Box box(Spot baseline, Anchor anchor, Weight weight, String words) {
    double letters = words.codePointCount(0, words.length());
    double wide = letters * (weight == Weight.BOLD ? BOLD_LETTER_WIDTH : LETTER_WIDTH) + 2;
    double left = anchor.left(baseline.x(), wide);
    return new Box(left, baseline.y() - FONT_SIZE * 0.85, wide, FONT_SIZE * 1.1);
  }

  /** Whether words stand there already. */
  boolean taken(Box box) {
    return words.stream().anyMatch(box::overlaps);
  }

  /** Keeps words from being set where something is drawn. */
  void keepFree(Box box) {
    words.add(box);
  }

  /** The finished drawing. */
  Picture picture() {
    return new Picture(width, top - MARGIN, bottom - top + 2 * MARGIN, description, marks);
  }

  Box inside(Box box) {
    double left = Math.max(2, Math.min(box.left(), width - 2 - box.width()));
    return new Box(left, box.top(), box.width(), box.height());
  }

  private void write(Spot at, Anchor anchor, Weight weight, String words, boolean reversed) {
    reach(at.y() - FONT_SIZE);
    reach(at.y() + FONT_SIZE * 0.3);
    marks.add(new Mark.Words(at, anchor, weight == Weight.BOLD, words, reversed));
  }

  private void reach(double y) {
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }

  /** How heavy words are. */
  enum Weight {
    REGULAR,
    BOLD
  }
}
