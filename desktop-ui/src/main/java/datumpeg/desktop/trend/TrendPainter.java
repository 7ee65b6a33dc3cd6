package datumpeg.desktop.trend;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.Palette;
import datumpeg.desktop.control.RoundTicks;
import datumpeg.desktop.control.StandingShape;
import datumpeg.desktop.text.Figures;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.text.TextAlignment;

/** Paints a trend: a column for each point, the deviation upward, limits as lines. */
final class TrendPainter {

  private final TrendPage page;
  private final GraphicsContext graphics;
  private final Palette palette;
  private final double left;
  private final double right;
  private final double top;
  private final double bottom;
  private final double width;
  private final double height;
  private final double lowest;
  private final double highest;

  TrendPainter(TrendPage page, GraphicsContext graphics, Palette palette) {
    this.page = page;
    this.graphics = graphics;
    this.palette = palette;
    this.left = palette.em(5.6);
    this.right = palette.em(1.6);
    this.top = palette.em(1.6);
    this.bottom = palette.em(4.3);
    this.width = graphics.getCanvas().getWidth();
    this.height = graphics.getCanvas().getHeight();
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
    graphics.setFont(palette.font(1));
    axis();
    limits(TrendPoint::upper, -palette.em(0.9));
    limits(TrendPoint::lower, palette.em(0.95));
    joins();
    for (int i = 0; i < page.points().size(); i++) {
      point(i, page.points().get(i));
    }
  }

  private void axis() {
    graphics.setTextBaseline(VPos.CENTER);
    graphics.setTextAlign(TextAlignment.RIGHT);
    for (double tick : RoundTicks.between(lowest, highest, 8)) {
      graphics.setStroke(palette.ink(tick == 0 ? Ink.TEXT : Ink.LINE));
      graphics.setLineWidth(tick == 0 ? 1.5 : 1);
      graphics.strokeLine(left, y(tick), width - right, y(tick));
      graphics.setFill(palette.ink(Ink.TEXT));
      graphics.fillText(Figures.tick(tick) + " " + page.unit(), left - 10, y(tick));
    }
  }

  /** Limits may differ from point to point, so each has its own piece of line. */
  private void limits(Function<TrendPoint, OptionalDouble> which, double above) {
    graphics.setStroke(palette.ink(Ink.LIMIT));
    graphics.setLineWidth(2);
    graphics.setLineDashes(9, 5);
    String written = "";
    for (int i = 0; i < page.points().size(); i++) {
      OptionalDouble limit = which.apply(page.points().get(i));
      if (limit.isPresent()) {
        double half = columnWidth() / 2;
        double y = y(limit.getAsDouble());
        graphics.strokeLine(x(i) - half, y, x(i) + half, y);
        String label = Figures.tick(Math.rint(limit.getAsDouble() * 10) / 10) + " " + page.unit();
        if (!label.equals(written)) {
          graphics.setFill(palette.ink(Ink.LIMIT));
          graphics.setTextAlign(TextAlignment.LEFT);
          graphics.fillText(label, x(i) - half + 6, y + above);
          written = label;
        }
      }
    }
    graphics.setLineDashes();
  }

  private void joins() {
    graphics.setStroke(palette.ink(Ink.TEXT));
    graphics.setLineWidth(1);
    for (int i = 1; i < page.points().size(); i++) {
      graphics.strokeLine(
          x(i - 1),
          y(page.points().get(i - 1).deviation()),
          x(i),
          y(page.points().get(i).deviation()));
    }
  }

  private void point(int index, TrendPoint point) {
    double x = x(index);
    double upper = y(point.deviation() + point.uncertainty());
    double end = y(point.deviation() - point.uncertainty());
    graphics.setStroke(palette.ink(point.standing()));
    graphics.setLineWidth(3);
    graphics.strokeLine(x, upper, x, end);
    graphics.strokeLine(x - 9, upper, x + 9, upper);
    graphics.strokeLine(x - 9, end, x + 9, end);
    graphics.setFill(palette.ink(Ink.PAPER));
    graphics.fillRect(x - 11, y(point.deviation()) - 11, 22, 22);
    StandingShape.of(point.standing())
        .paint(graphics, palette.ink(point.standing()), x, y(point.deviation()), 20);
    graphics.setFill(palette.ink(Ink.TEXT));
    graphics.setTextAlign(TextAlignment.LEFT);
    graphics.fillText(Figures.signed(point.deviation()), x + 16, y(point.deviation()) - 12);
    graphics.setTextAlign(TextAlignment.CENTER);
    graphics.fillText(point.label(), x, height - bottom + palette.em(1.5), columnWidth() - 6);
    graphics.fillText(point.written(), x, height - bottom + palette.em(3), columnWidth() - 6);
  }

  private double columnWidth() {
    return (width - left - right) / page.points().size();
  }

  private double x(int index) {
    return left + columnWidth() * (index + 0.5);
  }

  private double y(double value) {
    return top + (highest - value) / (highest - lowest) * (height - top - bottom);
  }
}
