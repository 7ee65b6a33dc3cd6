package datumpeg.desktop.form;

import datumpeg.analysis.report.drawing.Anchor;
import datumpeg.analysis.report.drawing.Box;
import datumpeg.analysis.report.drawing.Ink;
import datumpeg.analysis.report.drawing.Mark;
import datumpeg.analysis.report.drawing.Picture;
import datumpeg.analysis.report.drawing.Spot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A drawing in the making, of a given size, with dimensions. Names are placed last, where nothing
 * else is. One thread.
 */
final class Sheet {
  private static final double LETTER = 0.63 * Mark.FONT_SIZE;
  private static final double BOLDER = 1.13;
  private static final double TICK = 4;

  /** Between words and what they must keep off beside them; a line of words has room above. */
  private static final double GAP = 3;

  /** Where along a dimension its words are tried. */
  private static final double[] SHARES = {0.5, 0.3, 0.7, 0.2, 0.8, 0.4, 0.6};

  private final double width;
  private final double height;
  private final List<Mark> marks = new ArrayList<>();
  private final List<DrawnName> names = new ArrayList<>();
  private final Obstacles obstacles = new Obstacles();

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
    line(ink, new Spot(x1, y1), new Spot(x2, y2));
  }

  void line(Ink ink, Spot from, Spot to) {
    if (ink == Ink.GRID) {
      obstacles.grid(from, to);
    } else {
      obstacles.edge(from, to);
    }
    marks.add(new Mark.Line(ink, from, to));
  }

  void dot(Ink ink, Spot centre, double radius) {
    obstacles.box(new Box(centre.x() - radius, centre.y() - radius, 2 * radius, 2 * radius));
    marks.add(new Mark.Circle(ink, centre, radius));
  }

  void box(Ink ink, double left, double top, double wide, double high) {
    Box box = new Box(left, top, wide, high);
    obstacles.box(box);
    marks.add(new Mark.Rectangle(ink, box));
  }

  void outline(Ink ink, List<Spot> corners) {
    obstacles.outline(corners);
    marks.add(new Mark.Polygon(ink, corners));
  }

  /** A name, which is placed when all else is drawn; left out where all its places are taken. */
  void name(DrawnName name) {
    names.add(name);
  }

  /** Words upon a line of their own. */
  void onLine(String text, Spot middle, boolean bold) {
    Box box = box(text, new DrawnName.Place(middle.x(), middle.y(), Anchor.MIDDLE), bold);
    if (fits(text, box)) {
      write(text, box, Anchor.MIDDLE, bold);
    }
  }

  /** False if all its places are taken. */
  private boolean place(DrawnName name) {
    return place(name, false) || place(name, true);
  }

  private boolean place(DrawnName name, boolean alsoOnGrid) {
    for (DrawnName.Place place : name.places()) {
      Box box = box(name.text(), place, name.bold());
      Box kept = withGap(box);
      boolean free = !obstacles.areMet(kept) && (alsoOnGrid || !obstacles.isOnGrid(kept));
      if (fits(name.text(), box) && free) {
        write(name.text(), box, place.anchor(), name.bold());
        return true;
      }
    }
    return false;
  }

  private Box box(String text, DrawnName.Place place, boolean bold) {
    double wide = bold ? wideBold(text) : wide(text);
    double left = Math.max(0, Math.min(width - wide, place.anchor().left(place.x(), wide)));
    return new Box(left, place.y() - Mark.FONT_SIZE * 0.55, wide, Mark.FONT_SIZE * 1.1);
  }

  private static Box withGap(Box box) {
    return new Box(box.left() - GAP, box.top(), box.width() + 2 * GAP, box.height());
  }

  private boolean fits(String text, Box box) {
    return !text.isEmpty() && box.width() <= width && box.top() >= -1 && box.bottom() <= height + 1;
  }

  private void write(String text, Box box, Anchor anchor, boolean bold) {
    obstacles.words(box);
    marks.add(new Mark.Rectangle(Ink.BLANK, box));
    double at =
        switch (anchor) {
          case START -> box.left() + 2;
          case MIDDLE -> box.left() + box.width() / 2;
          case END -> box.right() - 2;
        };
    Spot baseline = new Spot(at, box.top() + Mark.FONT_SIZE * 0.9);
    marks.add(new Mark.Words(baseline, anchor, bold, text, false));
  }

  /**
   * A dimension from left to right, its words upon it: in its middle, else where nothing crosses.
   *
   * @param lit whether it is the one that is being typed
   */
  void across(double x1, double x2, double y, String text, boolean lit) {
    double wide = lit ? wideBold(text) : wide(text);
    DrawnName name =
        new DrawnName(
            text,
            lit,
            Arrays.stream(SHARES)
                .filter(share -> lit || 2 * Math.min(share, 1 - share) * (x2 - x1) > wide + TICK)
                .mapToObj(share -> new DrawnName.Place(x1 + share * (x2 - x1), y, Anchor.MIDDLE))
                .toList());
    drawDimension(lit, new Spot(x1, y), new Spot(x2, y), new Spot(0, TICK));
    if (!place(name) && lit) {
      onLine(text, new Spot((x1 + x2) / 2, y), true);
    }
    obstacles.edge(new Spot(x1, y), new Spot(x2, y));
  }

  /** A line that no words of its own must keep off. */
  private void drawDimension(boolean lit, Spot from, Spot to, Spot tick) {
    Ink ink = lit ? Ink.FOUND : Ink.THIN;
    marks.add(new Mark.Line(ink, from, to));
    for (Spot end : List.of(from, to)) {
      marks.add(
          new Mark.Line(
              ink,
              new Spot(end.x() - tick.x(), end.y() - tick.y()),
              new Spot(end.x() + tick.x(), end.y() + tick.y())));
    }
  }

  /** A dimension from bottom to top, its words beside it. */
  void upright(double x, double y1, double y2, String text, Anchor anchor, boolean lit) {
    drawDimension(lit, new Spot(x, y1), new Spot(x, y2), new Spot(TICK, 0));
    double beside = anchor == Anchor.END ? -2 * TICK : 2 * TICK;
    double step = 0.6 * Mark.FONT_SIZE;
    DrawnName.Place middle = new DrawnName.Place(x + beside, (y1 + y2) / 2, anchor);
    place(
        DrawnName.stepping(text, lit, middle, 4, 0, step)
            .or(DrawnName.stepping(text, lit, middle, 4, 0, -step)));
    obstacles.edge(new Spot(x, y1), new Spot(x, y2));
  }

  static double wide(String text) {
    return text.codePointCount(0, text.length()) * LETTER + 4;
  }

  /** As wide as the words of the dimension that is being typed. */
  static double wideBold(String text) {
    return BOLDER * wide(text);
  }

  /** As wide, with what keeps them off the line they stand beside. */
  static double wideBesideLine(String text) {
    return wideBold(text) + 2 * TICK + GAP;
  }

  Picture picture(String description) {
    names.forEach(this::place);
    return new Picture(width, 0, height, description, marks);
  }
}
