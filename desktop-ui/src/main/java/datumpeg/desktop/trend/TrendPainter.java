package datumpeg.desktop.trend;

import datumpeg.desktop.chart.ChartWindow;
import datumpeg.desktop.chart.Pen;
import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.RoundTicks;
import datumpeg.desktop.text.Figures;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/** Paints a trend: a column for each point, the deviation upward, limits as lines. */
final class TrendPainter {
  static final double LEFT_LETTERS = 5.6;
  static final double RIGHT_LETTERS = 1.6;

  private final TrendPage page;
  private final ChartWindow inView;
  private final int read;
  private final Pen pen;
  private final double left;
  private final double right;
  private final double top;
  private final double bottom;
  private final double width;
  private final double height;
  private final double lowest;
  private final double highest;

  /**
   * @param read the point that is read out; −1 for none
   */
  TrendPainter(TrendPage page, ChartWindow inView, int read, Pen pen) {
    this.page = page;
    this.inView = inView;
    this.read = read;
    this.pen = pen;
    this.left = pen.em(LEFT_LETTERS);
    this.right = pen.em(RIGHT_LETTERS);
    this.top = pen.em(1.6);
    this.bottom = pen.em(4.3);
    this.width = pen.width();
    this.height = pen.height();
    List<Double> values = page.points().stream().flatMap(TrendPainter::values).toList();
    double low = values.stream().mapToDouble(v -> v).min().orElse(-1);
    double high = values.stream().mapToDouble(v -> v).max().orElse(1);
    double room = Math.max(1e-6, high - low) * 0.12;
    this.lowest = low - room;
    this.highest = high + room;
  }

  /** All that must be in the picture: bars from end to end, limits, and nothing (no deviation). */
  private static Stream<Double> values(TrendPoint point) {
    Stream<Double> bar =
        Stream.of(
            0.0, point.deviation() - point.uncertainty(), point.deviation() + point.uncertainty());
    Stream<Double> limits =
        Stream.of(point.lower(), point.upper())
            .filter(OptionalDouble::isPresent)
            .map(OptionalDouble::getAsDouble);
    return Stream.concat(bar, limits);
  }

  void paint() {
    if (page.points().isEmpty() || width < left + right || height < top + bottom) {
      return;
    }
    axis();
    limits(TrendPoint::upper, -pen.em(0.9));
    limits(TrendPoint::lower, pen.em(0.95));
    joins();
    for (int i = first(); i <= last(); i++) {
      point(i, page.points().get(i));
    }
  }

  private int first() {
    return inView.firstPoint();
  }

  private int last() {
    return inView.lastPoint(page.points().size());
  }

  private void axis() {
    for (double tick : RoundTicks.between(lowest, highest, 8)) {
      Ink ink = tick == 0 ? Ink.TEXT : Ink.LINE;
      pen.line(left, y(tick), width - right, y(tick), ink, tick == 0 ? 1.5 : 1);
      String written = Figures.tick(tick) + " " + page.unit();
      pen.text(written, left - 10, y(tick), Ink.TEXT, Pen.Align.RIGHT);
    }
  }

  /** Limits may differ from point to point, so each has its own piece of line. */
  private void limits(Function<TrendPoint, OptionalDouble> which, double above) {
    String written = "";
    for (int i = first(); i <= last(); i++) {
      OptionalDouble limit = which.apply(page.points().get(i));
      if (limit.isPresent()) {
        double half = columnWidth() / 2;
        double y = y(limit.getAsDouble());
        pen.line(x(i) - half, y, x(i) + half, y, Ink.PAPER, 3); // no line of the axis in the gaps
        pen.dashes(x(i) - half, y, x(i) + half, y, Ink.LIMIT, 2);
        String label = Figures.limit(limit.getAsDouble(), page.unit());
        if (!label.equals(written)) {
          pen.text(label, x(i) - half + 6, y + above, Ink.LIMIT, Pen.Align.LEFT);
          written = label;
        }
      }
    }
  }

  private void joins() {
    for (int i = first() + 1; i <= last(); i++) {
      double from = y(page.points().get(i - 1).deviation());
      pen.line(x(i - 1), from, x(i), y(page.points().get(i).deviation()), Ink.TEXT, 1);
    }
  }

  private void point(int index, TrendPoint point) {
    double x = x(index);
    double middle = y(point.deviation());
    double upper = y(point.deviation() + point.uncertainty());
    double end = y(point.deviation() - point.uncertainty());
    Ink ink = Ink.of(point.standing());
    if (index == read) {
      pen.line(x, top, x, height - bottom, Ink.LINE, 3);
    }
    pen.line(x, upper, x, end, ink, 3);
    pen.line(x - 9, upper, x + 9, upper, ink, 3);
    pen.line(x - 9, end, x + 9, end, ink, 3);
    pen.block(x - 11, middle - 11, 22, 22, Ink.PAPER);
    pen.standing(point.standing(), x, middle, 20);
    String written = Figures.signed(point.deviation(), page.unit());
    double above = middle - pen.em(0.9);
    pen.block(
        x + 14, above - pen.em(0.55), pen.em(0.66) * written.length(), pen.em(1.1), Ink.PAPER);
    pen.text(written, x + 16, above, Ink.TEXT, Pen.Align.LEFT);
    double widest = columnWidth() - 6;
    pen.label(point.label(), x, height - bottom + pen.em(1.5), Ink.TEXT, widest);
    pen.label(point.written(), x, height - bottom + pen.em(3), Ink.TEXT, widest);
  }

  private double columnWidth() {
    return (width - left - right) / inView.width();
  }

  private double x(int index) {
    return left + columnWidth() * (index - inView.from());
  }

  private double y(double value) {
    return top + (highest - value) / (highest - lowest) * (height - top - bottom);
  }
}
