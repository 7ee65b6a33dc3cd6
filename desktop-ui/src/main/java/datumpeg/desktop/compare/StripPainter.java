package datumpeg.desktop.compare;

import datumpeg.desktop.chart.Mark;
import datumpeg.desktop.chart.Pen;
import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.RoundTicks;
import datumpeg.desktop.text.Figures;
import java.util.stream.DoubleStream;

/**
 * Paints a strip for each group, one below the other on one axis: short strokes for outcomes, below
 * them rings for the means of jobs, below these a thick line for the interval of the group's mean
 * with a full block at the mean. Numbers stand below each strip.
 */
final class StripPainter {
  /** The height of one strip with its words, in heights of plain text. */
  private static final double STRIP = 9.4;

  /** How far below the top of its strip each thing is, in the same. */
  private static final double STROKES = 2.2;

  private static final double RINGS = 3.7;
  private static final double INTERVAL = 5.1;
  private static final double NUMBERS = 6.7;
  private static final double SPREAD = 8;

  /** More outcomes than this a group are thinned: strokes on one another show nothing more. */
  private static final int MOST_STROKES = 2000;

  private final ComparePage page;
  private final Pen pen;
  private final double left;
  private final double right;
  private final double top;
  private final double lowest;
  private final double highest;

  StripPainter(ComparePage page, Pen pen) {
    this.page = page;
    this.pen = pen;
    this.left = pen.em(1.5);
    this.right = pen.width() - pen.em(1.5);
    this.top = pen.em(2.2);
    double low = all().min().orElse(-1);
    double high = all().max().orElse(1);
    double room = Math.max(0.1, high - low) * 0.06;
    this.lowest = low - room;
    this.highest = high + room;
  }

  /** How high a strip with its words is, in heights of plain text. */
  static double heightInLetters(int strips) {
    return 2.8 + STRIP * strips;
  }

  private DoubleStream all() {
    return page.strips().stream()
        .flatMapToDouble(
            strip ->
                DoubleStream.concat(
                    strip.values().stream().mapToDouble(value -> value),
                    DoubleStream.of(
                        0,
                        strip.mean() - strip.halfWidth().orElse(0),
                        strip.mean() + strip.halfWidth().orElse(0))));
  }

  void paint() {
    if (page.strips().isEmpty() || right <= left) {
      return;
    }
    axis();
    for (int i = 0; i < page.strips().size(); i++) {
      strip(page.strips().get(i), top + pen.em(STRIP) * i);
    }
  }

  private void axis() {
    int most = (int) Math.max(2, Math.min(11, (right - left) / pen.em(6)));
    for (double tick : RoundTicks.between(lowest, highest, most)) {
      for (int i = 0; i < page.strips().size(); i++) {
        double from = top + pen.em(STRIP) * i;
        Ink ink = tick == 0 ? Ink.QUIET : Ink.LINE;
        pen.line(
            x(tick),
            from + pen.em(STROKES - 0.9),
            x(tick),
            from + pen.em(INTERVAL + 0.7),
            ink,
            tick == 0 ? 2 : 1);
      }
      double place = Math.max(left + pen.em(2), Math.min(right - pen.em(2), x(tick)));
      String written = Figures.tick(tick) + " " + page.unit();
      pen.text(written, place, pen.em(1), Ink.TEXT, Pen.Align.MIDDLE);
    }
  }

  private void strip(GroupStrip strip, double from) {
    String heading = strip.name() + " (" + strip.counts() + ")";
    pen.words(heading, left, from + pen.em(0.8), Ink.TEXT, Pen.Weight.BOLD, right - left);
    int end = strip.numbers().indexOf(". ") + 1;
    String told = end > 0 ? strip.numbers().substring(0, end) : strip.numbers();
    String spread = end > 0 ? strip.numbers().substring(end + 1) : "";
    pen.words(told, left, from + pen.em(NUMBERS), Ink.TEXT, Pen.Weight.PLAIN, right - left);
    pen.words(spread, left, from + pen.em(SPREAD), Ink.TEXT, Pen.Weight.PLAIN, right - left);
    int step = Math.max(1, strip.values().size() / MOST_STROKES);
    for (int i = 0; i < strip.values().size(); i += step) {
      double x = x(strip.values().get(i));
      pen.line(x, from + pen.em(STROKES - 0.7), x, from + pen.em(STROKES + 0.7), Ink.QUIET, 1);
    }
    double rings = from + pen.em(RINGS);
    strip.jobMeans().forEach(mean -> pen.mark(Mark.MEAN, x(mean), rings, pen.em(0.6), Ink.TEXT));
    interval(strip, from + pen.em(INTERVAL));
  }

  private void interval(GroupStrip strip, double middle) {
    if (strip.halfWidth().isPresent()) {
      double half = strip.halfWidth().getAsDouble();
      double begin = x(strip.mean() - half);
      double width = x(strip.mean() + half) - begin;
      pen.block(begin, middle - pen.em(0.1), width, pen.em(0.2), Ink.ACCENT);
      pen.block(begin - 1, middle - pen.em(0.45), 3, pen.em(0.9), Ink.ACCENT);
      pen.block(begin + width - 2, middle - pen.em(0.45), 3, pen.em(0.9), Ink.ACCENT);
    }
    double block = x(strip.mean()) - pen.em(0.2);
    pen.block(block, middle - pen.em(0.7), pen.em(0.4), pen.em(1.4), Ink.ACCENT);
  }

  private double x(double value) {
    return left + (value - lowest) / (highest - lowest) * (right - left);
  }
}
