package datumpeg.desktop.compare;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.Palette;
import datumpeg.desktop.control.RoundTicks;
import datumpeg.desktop.text.Figures;
import java.util.stream.DoubleStream;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.text.TextAlignment;

/**
 * Paints a strip for each group, one below the other on one axis: short strokes for outcomes, rings
 * for the means of jobs, a thick line for the interval of the group's mean with a full block at the
 * mean. Numbers stand below each strip.
 */
final class StripPainter {
  /** More outcomes than this a group are thinned: strokes on one another show nothing more. */
  private static final int MOST_STROKES = 2000;

  private final ComparePage page;
  private final GraphicsContext graphics;
  private final Palette palette;
  private final double left;
  private final double right;
  private final double top;
  private final double lowest;
  private final double highest;

  StripPainter(ComparePage page, GraphicsContext graphics, Palette palette) {
    this.page = page;
    this.graphics = graphics;
    this.palette = palette;
    this.left = palette.em(1.5);
    this.right = graphics.getCanvas().getWidth() - palette.em(1.5);
    this.top = palette.em(2.2);
    double low = all().min().orElse(-1);
    double high = all().max().orElse(1);
    double room = Math.max(0.1, high - low) * 0.06;
    this.lowest = low - room;
    this.highest = high + room;
  }

  /** How high a strip with its words is, in heights of plain text. */
  static double heightInLetters(int strips) {
    return 2.8 + 5.2 * strips;
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
    graphics.setTextBaseline(VPos.CENTER);
    axis();
    for (int i = 0; i < page.strips().size(); i++) {
      strip(page.strips().get(i), top + palette.em(5.2) * i);
    }
  }

  private void axis() {
    graphics.setFont(palette.font(1));
    graphics.setTextAlign(TextAlignment.CENTER);
    double end = top + palette.em(5.2) * page.strips().size();
    int most = (int) Math.max(2, Math.min(11, (right - left) / palette.em(6)));
    for (double tick : RoundTicks.between(lowest, highest, most)) {
      graphics.setStroke(palette.ink(tick == 0 ? Ink.QUIET : Ink.LINE));
      graphics.setLineWidth(tick == 0 ? 2 : 1);
      graphics.strokeLine(x(tick), top, x(tick), end);
      graphics.setFill(palette.ink(Ink.TEXT));
      double place = Math.max(left + palette.em(2), Math.min(right - palette.em(2), x(tick)));
      graphics.fillText(Figures.tick(tick) + " " + page.unit(), place, palette.em(1));
    }
  }

  private void strip(GroupStrip strip, double from) {
    double middle = from + palette.em(2.2);
    words(strip, from);
    graphics.setStroke(palette.ink(Ink.QUIET));
    graphics.setLineWidth(1);
    int step = Math.max(1, strip.values().size() / MOST_STROKES);
    for (int i = 0; i < strip.values().size(); i += step) {
      double x = x(strip.values().get(i));
      graphics.strokeLine(x, middle - palette.em(0.7), x, middle + palette.em(0.7));
    }
    graphics.setLineWidth(2);
    graphics.setStroke(palette.ink(Ink.TEXT));
    double ring = palette.em(0.6);
    strip
        .jobMeans()
        .forEach(mean -> graphics.strokeOval(x(mean) - ring / 2, middle - ring / 2, ring, ring));
    interval(strip, middle);
  }

  private void interval(GroupStrip strip, double middle) {
    graphics.setFill(palette.ink(Ink.ACCENT));
    if (strip.halfWidth().isPresent()) {
      double half = strip.halfWidth().getAsDouble();
      double begin = x(strip.mean() - half);
      double width = x(strip.mean() + half) - begin;
      graphics.fillRect(begin, middle - palette.em(0.1), width, palette.em(0.2));
      graphics.fillRect(begin - 1, middle - palette.em(0.45), 3, palette.em(0.9));
      graphics.fillRect(begin + width - 2, middle - palette.em(0.45), 3, palette.em(0.9));
    }
    graphics.fillRect(
        x(strip.mean()) - palette.em(0.2),
        middle - palette.em(0.7),
        palette.em(0.4),
        palette.em(1.4));
  }

  private void words(GroupStrip strip, double from) {
    graphics.setTextAlign(TextAlignment.LEFT);
    graphics.setFill(palette.ink(Ink.TEXT));
    graphics.setFont(palette.bold(1));
    graphics.fillText(
        strip.name() + " (" + strip.counts() + ")", left, from + palette.em(0.8), right - left);
    graphics.setFont(palette.font(0.93));
    graphics.fillText(strip.numbers(), left, from + palette.em(3.8), right - left);
  }

  private double x(double value) {
    return left + (value - lowest) / (highest - lowest) * (right - left);
  }
}
