package datumpeg.desktop.form;

import datumpeg.analysis.report.drawing.Anchor;
import datumpeg.analysis.report.drawing.Box;
import datumpeg.analysis.report.drawing.Ink;
import datumpeg.analysis.report.drawing.Mark;
import datumpeg.analysis.report.drawing.Picture;
import datumpeg.analysis.report.drawing.Spot;
import java.util.ArrayList;
import java.util.List;

/** A drawing in the making, of a given size, with dimensions. One thread. */
final class Sheet {
  private static final double LETTER = 0.63 * Mark.FONT_SIZE;
  private static final double BOLDER = 1.13;
  private static final double TICK = 4;

  private final double width;
  private final double height;
  private final List<Mark> marks = new ArrayList<>();
  private final List<Box> taken = new ArrayList<>();

  Sheet(double width, double height) {
    this.width = width;
    this.height = height;
  }

  double width() {
    return width;
  }

  double height() {
    return height;
  }

  void line(Ink ink, double x1, double y1, double x2, double y2) {
    marks.add(new Mark.Line(ink, new Spot(x1, y1), new Spot(x2, y2)));
  }

  void line(Ink ink, Spot from, Spot to) {
    marks.add(new Mark.Line(ink, from, to));
  }

  void dot(Ink ink, Spot centre, double radius) {
    marks.add(new Mark.Circle(ink, centre, radius));
  }

  void box(Ink ink, double left, double top, double wide, double high) {
    marks.add(new Mark.Rectangle(ink, new Box(left, top, wide, high)));
  }

  void outline(Ink ink, List<Spot> corners) {
    marks.add(new Mark.Polygon(ink, corners));
  }

  /** Words with their middle at y; left out where others stand already, or the sheet ends. */
  void words(String text, double x, double y, Anchor anchor, boolean bold) {
    double wide = bold ? wideBold(text) : wide(text);
    double left = Math.max(0, Math.min(width - wide, anchor.left(x, wide)));
    Box box = new Box(left, y - Mark.FONT_SIZE * 0.55, wide, Mark.FONT_SIZE * 1.1);
    boolean fits = wide <= width && box.top() >= -1 && box.bottom() <= height + 1;
    if (text.isEmpty() || !fits || taken.stream().anyMatch(other -> overlap(box, other))) {
      return;
    }
    taken.add(box);
    marks.add(new Mark.Rectangle(Ink.BLANK, box));
    double at =
        switch (anchor) {
          case START -> left + 2;
          case MIDDLE -> left + wide / 2;
          case END -> left + wide - 2;
        };
    Spot baseline = new Spot(at, y + Mark.FONT_SIZE * 0.35);
    marks.add(new Mark.Words(baseline, anchor, bold, text, false));
  }

  /**
   * A dimension from left to right, its words upon it.
   *
   * @param lit whether it is the one that is being typed
   */
  void across(double x1, double x2, double y, String text, boolean lit) {
    Ink ink = lit ? Ink.FOUND : Ink.THIN;
    line(ink, x1, y, x2, y);
    line(ink, x1, y - TICK, x1, y + TICK);
    line(ink, x2, y - TICK, x2, y + TICK);
    if (lit || wide(text) < x2 - x1 - TICK) {
      words(text, (x1 + x2) / 2, y, Anchor.MIDDLE, lit);
    }
  }

  /** A dimension from bottom to top, its words beside it. */
  void upright(double x, double y1, double y2, String text, Anchor anchor, boolean lit) {
    Ink ink = lit ? Ink.FOUND : Ink.THIN;
    line(ink, x, y1, x, y2);
    line(ink, x - TICK, y1, x + TICK, y1);
    line(ink, x - TICK, y2, x + TICK, y2);
    double beside = anchor == Anchor.END ? -2 * TICK : 2 * TICK;
    words(text, x + beside, (y1 + y2) / 2, anchor, lit);
  }

  static double wide(String text) {
    return text.codePointCount(0, text.length()) * LETTER + 4;
  }

  /** As wide as the words of the dimension that is being typed. */
  static double wideBold(String text) {
    return BOLDER * wide(text);
  }

  Picture picture(String description) {
    return new Picture(width, 0, height, description, marks);
  }

  private static boolean overlap(Box one, Box other) {
    return one.left() < other.right()
        && other.left() < one.right()
        && one.top() < other.bottom()
        && other.top() < one.bottom();
  }
}
