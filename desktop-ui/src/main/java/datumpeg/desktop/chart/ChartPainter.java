package datumpeg.desktop.chart;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.RoundTicks;
import datumpeg.desktop.text.Figures;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * Paints the part of a row of points that is in view. Where there are more points than places for
 * them, each column of pixels shows the least and the greatest of its points, so that what is drawn
 * depends on the width of the screen, and no point that sticks out is lost.
 */
public final class ChartPainter {
  /** Points nearer than this many pixels are drawn as columns. */
  private static final double LEAST_PIXELS_A_POINT = 4;

  /** Room beside the plot for numbers on the left and the lines' names on the right. */
  static final double LEFT_LETTERS = 6;

  static final double RIGHT_LETTERS = 10.5;

  private static final double LEAST_PIXELS_A_BAR = 12;
  private static final int NO_CURSOR = -1;

  private final ChartPoints points;
  private final ChartWindow window;
  private final ChartLabels labels;
  private final int cursor;
  private final Pen pen;
  private final double left;
  private final double right;
  private final double top;
  private final double bottom;

  /**
   * @param cursor the point that is read out; −1 for none
   */
  public ChartPainter(
      ChartPoints points, ChartWindow window, ChartLabels labels, int cursor, Pen pen) {
    this.points = points;
    this.window = window;
    this.labels = labels;
    this.cursor = cursor;
    this.pen = pen;
    this.left = pen.em(LEFT_LETTERS);
    this.right = pen.width() - pen.em(RIGHT_LETTERS);
    this.top = pen.em(1.4);
    this.bottom = pen.height() - pen.em(3.4);
  }

  /** Paints all; nothing where there are no points or no room. */
  public void paint() {
    if (points.size() == 0 || right <= left || bottom <= top) {
      return;
    }
    axis();
    places();
    permitted();
    control();
    cursor();
    if (pixelsAPoint() < LEAST_PIXELS_A_POINT) {
      columns();
    } else {
      singlePoints();
    }
    names();
  }

  private void axis() {
    int most = (int) Math.max(2, Math.min(9, (bottom - top) / pen.em(2)));
    for (double tick : RoundTicks.between(points.lowest(), points.highest(), most)) {
      boolean nothing = tick == 0;
      pen.line(left, y(tick), right, y(tick), nothing ? Ink.QUIET : Ink.LINE, nothing ? 1.5 : 1);
      String text = Figures.tick(tick) + " " + labels.unit();
      pen.text(text, left - pen.em(0.5), y(tick), Ink.TEXT, Pen.Align.RIGHT);
    }
  }

  /** Numbers of points and what stands under them, as many as there is room for. */
  private void places() {
    int first = window.firstPoint();
    int last = window.lastPoint(points.size());
    int most = (int) Math.max(1, (right - left) / pen.em(7.5));
    int seen = last - first + 1;
    int step = Math.max(1, Math.min(seen, RoundTicks.wholeStep(seen / (double) most)));
    double before = Double.NEGATIVE_INFINITY;
    for (int i = (first + step) / step * step - 1; i <= last; i += step) {
      double x = Math.max(left + pen.em(1), Math.min(right - pen.em(2), x(i)));
      pen.line(x(i), bottom, x(i), bottom + pen.em(0.3), Ink.QUIET, 1);
      if (x - before < pen.em(7)) {
        continue; // the last one, moved in from the edge
      }
      before = x;
      pen.text(Integer.toString(i + 1), x, bottom + pen.em(1), Ink.TEXT, Pen.Align.MIDDLE);
      pen.text(labels.place().apply(i), x, bottom + pen.em(2.3), Ink.QUIET, Pen.Align.MIDDLE);
    }
  }

  private void permitted() {
    steps(points::permittedLower, Ink.LIMIT, 2, true, true);
    steps(points::permittedUpper, Ink.LIMIT, 2, true, false);
  }

  private void control() {
    if (!Double.isNaN(points.centre())) {
      pen.line(left, y(points.centre()), right, y(points.centre()), Ink.ACCENT, 1.5);
    }
    steps(points::controlLower, Ink.ACCENT, 2, false, true);
    steps(points::controlUpper, Ink.ACCENT, 2, false, false);
  }

  /**
   * A line that may step from point to point: pieces of equal value are joined; in a column of
   * pixels with several values the tightest is drawn.
   */
  private void steps(
      IntToDoubleFunction line, Ink ink, double thickness, boolean dashed, boolean lower) {
    double pixel = Math.max(1, pixelsAPoint());
    double begin = left;
    double before = Double.NaN;
    for (double x = left; x < right; x += pixel) {
      double here = tightest(line, x, Math.min(right, x + pixel), lower);
      if (Double.compare(here, before) != 0) {
        piece(begin, x, before, ink, thickness, dashed);
        begin = x;
        before = here;
      }
    }
    piece(begin, right, before, ink, thickness, dashed);
  }

  private double tightest(IntToDoubleFunction line, double from, double to, boolean lower) {
    int first = Math.max(0, (int) Math.ceil(place(from) - 0.5 + 1e-9));
    int last = Math.min(points.size() - 1, Math.max(first, (int) Math.floor(place(to) - 0.5)));
    double found = Double.NaN;
    for (int i = Math.min(first, points.size() - 1); i <= last; i++) {
      double value = line.applyAsDouble(i);
      if (!Double.isNaN(value)) {
        found =
            Double.isNaN(found) ? value : lower ? Math.max(found, value) : Math.min(found, value);
      }
    }
    return found;
  }

  private void piece(
      double from, double to, double value, Ink ink, double thickness, boolean dashed) {
    if (Double.isNaN(value) || to <= from) {
      return;
    }
    if (dashed) {
      pen.line(from, y(value), to, y(value), Ink.PAPER, thickness + 1); // keeps the gaps open
      pen.dashes(from, y(value), to, y(value), ink, thickness);
    } else {
      pen.line(from, y(value), to, y(value), ink, thickness);
    }
  }

  private void cursor() {
    if (cursor > NO_CURSOR && cursor < points.size() && x(cursor) >= left && x(cursor) <= right) {
      pen.line(x(cursor), top, x(cursor), bottom, Ink.ACCENT, 1);
    }
  }

  /** Least and greatest of each column of pixels, from the last value of the column before. */
  private void columns() {
    int next = window.firstPoint();
    int last = window.lastPoint(points.size());
    double before = points.value(next);
    for (double x = left; x < right && next <= last; x++) {
      double low = before;
      double high = before;
      Mark mark = Mark.PLAIN;
      double marked = 0;
      double end = place(x + 1);
      while (next <= last && next <= end) {
        double value = points.value(next);
        low = Math.min(low, value);
        high = Math.max(high, value);
        if (points.mark(next) == Mark.BEYOND) {
          mark = Mark.BEYOND;
          marked = value;
        }
        before = value;
        next++;
      }
      pen.block(x, y(high), 1, Math.max(1, y(low) - y(high)), Ink.TEXT);
      if (mark == Mark.BEYOND) {
        pen.mark(mark, x, y(marked), pen.em(0.3), Ink.NONCONFORMING);
      }
    }
  }

  private void singlePoints() {
    int first = window.firstPoint();
    int last = window.lastPoint(points.size());
    for (int i = Math.max(1, first); i <= last; i++) {
      double fromX = Math.max(left, x(i - 1));
      if (i > first) {
        pen.line(fromX, y(points.value(i - 1)), x(i), y(points.value(i)), Ink.QUIET, 1);
      }
    }
    double size = Math.min(pen.em(0.6), Math.max(3, pixelsAPoint() * 0.6));
    for (int i = first; i <= last; i++) {
      bar(i);
      Mark mark = points.mark(i);
      Ink ink =
          switch (mark) {
            case PLAIN, MEAN -> Ink.TEXT;
            case IN_A_RUN -> Ink.UNDECIDED;
            case BEYOND -> Ink.NONCONFORMING;
          };
      pen.mark(mark, x(i), y(points.value(i)), i == cursor ? size * 1.5 : size, ink);
    }
  }

  private void bar(int index) {
    double half = points.bar(index);
    if (half > 0 && pixelsAPoint() >= LEAST_PIXELS_A_BAR) {
      double x = x(index);
      double upper = y(points.value(index) + half);
      double lower = y(points.value(index) - half);
      pen.line(x, upper, x, lower, Ink.QUIET, 1.5);
      pen.line(x - 3, upper, x + 3, upper, Ink.QUIET, 1.5);
      pen.line(x - 3, lower, x + 3, lower, Ink.QUIET, 1.5);
    }
  }

  /** Names of the lines beside the plot, each at its line or as near as there is room. */
  private void names() {
    int last = Math.max(0, window.lastPoint(points.size()));
    List<Name> names = new ArrayList<>();
    name(names, labels.permitted(), points.permittedUpper(last), Ink.LIMIT);
    name(names, labels.control(), points.controlUpper(last), Ink.ACCENT);
    name(names, labels.centre(), points.centre(), Ink.ACCENT);
    name(names, labels.control(), points.controlLower(last), Ink.ACCENT);
    name(names, labels.permitted(), points.permittedLower(last), Ink.LIMIT);
    names.sort(Comparator.comparingDouble(Name::y));
    double line = pen.em(1.2);
    double least = top - pen.em(0.6);
    for (int i = 0; i < names.size(); i++) {
      double most = bottom - line * (names.size() - 1 - i);
      double y = Math.max(least, Math.min(most, names.get(i).y()));
      pen.text(names.get(i).text(), right + pen.em(0.5), y, names.get(i).ink(), Pen.Align.LEFT);
      least = y + line;
    }
  }

  private record Name(String text, double y, Ink ink) {}

  private void name(List<Name> names, String name, double value, Ink ink) {
    if (!Double.isNaN(value)) {
      names.add(new Name(name + " " + Figures.signed(value, labels.unit()), y(value), ink));
    }
  }

  private double pixelsAPoint() {
    return (right - left) / window.width();
  }

  private double x(double place) {
    return left + (place - window.from()) * pixelsAPoint();
  }

  private double place(double x) {
    return window.from() + (x - left) / pixelsAPoint();
  }

  private double y(double value) {
    return top + (points.highest() - value) / (points.highest() - points.lowest()) * (bottom - top);
  }
}
