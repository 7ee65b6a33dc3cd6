package datumpeg.desktop.compare;

import datumpeg.desktop.chart.Mark;
import datumpeg.desktop.chart.Pen;
import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.RoundTicks;
import datumpeg.desktop.text.Figures;
import java.util.BitSet;
import java.util.List;

/**
 * Paints a strip for each group, one below the other on one axis: short strokes for outcomes, below
 * them rings for the means of jobs, below these a thick line for the interval of the group's mean
 * with a full block at the mean. Numbers stand below each strip.
 */
final class StripPainter {
  /** How high the numbers of the axis are, in heights of plain text. */
  static final double AXIS = 2.2;

  /** The height of one strip with its words, in the same. */
  static final double STRIP = 9.4;

  /** How far below the top of its strip each thing is, in the same. */
  private static final double STROKES = 2.2;

  private static final double RINGS = 3.7;
  private static final double INTERVAL = 5.1;
  private static final double NUMBERS = 6.7;
  private static final double SPREAD = 8;

  private final ComparePage page;
  private final Pen pen;
  private final double left;
  private final double right;
  private final List<Double> ticks;

  StripPainter(ComparePage page, Pen pen) {
    this.page = page;
    this.pen = pen;
    this.left = pen.em(1.5);
    this.right = pen.width() - pen.em(1.5);
    int most = (int) Math.max(2, Math.min(11, (right - left) / pen.em(6)));
    this.ticks = RoundTicks.between(page.scale().lowest(), page.scale().highest(), most);
  }

  /** How high the axis and so many strips with their words are, in heights of plain text. */
  static double heightInLetters(int strips) {
    return AXIS + STRIP * strips + 0.6;
  }

  /** Axis and strips, one below the other. */
  void paint() {
    axis();
    for (int i = 0; i < page.strips().size(); i++) {
      strip(page.strips().get(i), pen.em(AXIS + STRIP * i));
    }
  }

  /** The numbers of the axis. */
  void axis() {
    if (right <= left) {
      return;
    }
    for (double tick : ticks) {
      double place = Math.max(left + pen.em(2), Math.min(right - pen.em(2), x(tick)));
      String written = Figures.tick(tick) + " " + page.unit();
      pen.text(written, place, pen.em(1), Ink.TEXT, Pen.Align.MIDDLE);
    }
  }

  /** One strip from a height downward. */
  void strip(GroupStrip strip, double from) {
    if (right <= left) {
      return;
    }
    for (double tick : ticks) {
      double top = from + pen.em(STROKES - 0.9);
      double bottom = from + pen.em(INTERVAL + 0.7);
      Ink ink = tick == 0 ? Ink.QUIET : Ink.LINE;
      pen.line(x(tick), top, x(tick), bottom, ink, tick == 0 ? 2 : 1);
    }
    words(strip, from);
    strokes(strip, from + pen.em(STROKES - 0.7));
    double rings = from + pen.em(RINGS);
    places(strip.jobMeans()).stream()
        .forEach(pixel -> pen.mark(Mark.MEAN, pixel, rings, pen.em(0.6), Ink.TEXT));
    interval(strip, from + pen.em(INTERVAL));
  }

  private void words(GroupStrip strip, double from) {
    String heading = strip.name() + " (" + strip.counts() + ")";
    pen.words(heading, left, from + pen.em(0.8), Ink.TEXT, Pen.Weight.BOLD, right - left);
    int end = strip.numbers().indexOf(". ") + 1;
    String told = end > 0 ? strip.numbers().substring(0, end) : strip.numbers();
    String spread = end > 0 ? strip.numbers().substring(end + 1) : "";
    pen.words(told, left, from + pen.em(NUMBERS), Ink.TEXT, Pen.Weight.PLAIN, right - left);
    pen.words(spread, left, from + pen.em(SPREAD), Ink.TEXT, Pen.Weight.PLAIN, right - left);
  }

  /** Strokes side by side are one block: what is drawn depends on the width, not on the data. */
  private void strokes(GroupStrip strip, double top) {
    BitSet pixels = places(strip.values());
    int begin = pixels.nextSetBit(0);
    while (begin >= 0) {
      int end = pixels.nextClearBit(begin);
      pen.block(begin, top, end - begin, pen.em(1.4), Ink.QUIET);
      begin = pixels.nextSetBit(end);
    }
  }

  /** On which whole pixels values lie: more on one another show nothing more. */
  private BitSet places(List<Double> values) {
    BitSet pixels = new BitSet();
    values.forEach(value -> pixels.set((int) Math.max(0, Math.round(x(value)))));
    return pixels;
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
    return left + page.scale().part(value) * (right - left);
  }
}
