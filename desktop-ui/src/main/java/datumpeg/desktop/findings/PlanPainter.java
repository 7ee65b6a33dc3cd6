package datumpeg.desktop.findings;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.Palette;
import datumpeg.desktop.control.StandingShape;
import datumpeg.desktop.findings.PlanSketch.Arrow;
import datumpeg.desktop.findings.PlanSketch.Level;
import datumpeg.desktop.findings.PlanSketch.Span;
import datumpeg.desktop.findings.PlanSketch.Spot;
import datumpeg.desktop.text.Standing;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javafx.geometry.BoundingBox;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Paints a plan sketch: end 1 on the left, side A below. */
final class PlanPainter {
  private static final double MARGIN_EM = 2.7;

  private final PlanSketch sketch;
  private final GraphicsContext graphics;
  private final Palette palette;
  private final double scale;
  private final double left;
  private final double bottom;
  private final double lowestX;
  private final double lowestY;
  private final List<BoundingBox> numbers = new ArrayList<>();

  PlanPainter(PlanSketch sketch, GraphicsContext graphics, Palette palette) {
    this.sketch = sketch;
    this.graphics = graphics;
    this.palette = palette;
    List<Spot> all = Stream.concat(sketch.outline().stream(), sketch.found().stream()).toList();
    this.lowestX = all.stream().mapToDouble(Spot::xMetres).min().orElse(0);
    this.lowestY = all.stream().mapToDouble(Spot::yMetres).min().orElse(0);
    double wide = all.stream().mapToDouble(Spot::xMetres).max().orElse(1) - lowestX;
    double high = all.stream().mapToDouble(Spot::yMetres).max().orElse(1) - lowestY;
    double width = graphics.getCanvas().getWidth();
    double height = graphics.getCanvas().getHeight();
    double margin = palette.em(MARGIN_EM);
    this.scale = Math.max(0, Math.min((width - 2 * margin) / wide, (height - 2 * margin) / high));
    this.left = (width - wide * scale) / 2;
    this.bottom = (height + high * scale) / 2;
  }

  void paint() {
    graphics.setFont(palette.font(0.93));
    graphics.setTextBaseline(VPos.CENTER);
    graphics.setLineDashes(6, 4);
    outline(sketch.outline(), palette.ink(Ink.QUIET), 1.5);
    graphics.setLineDashes();
    outline(sketch.found(), palette.ink(Ink.TEXT), 2.5);
    corners();
    columns();
    sketch.spans().forEach(this::span);
    sketch.levels().forEach(this::level);
    sketch.arrows().forEach(this::arrow);
  }

  private void outline(List<Spot> spots, Color ink, double width) {
    graphics.setStroke(ink);
    graphics.setLineWidth(width);
    double[] xs = spots.stream().mapToDouble(spot -> x(spot.xMetres())).toArray();
    double[] ys = spots.stream().mapToDouble(spot -> y(spot.yMetres())).toArray();
    graphics.strokePolygon(xs, ys, xs.length);
  }

  private void corners() {
    double middleX = sketch.outline().stream().mapToDouble(Spot::xMetres).average().orElse(0);
    double middleY = sketch.outline().stream().mapToDouble(Spot::yMetres).average().orElse(0);
    graphics.setFill(palette.ink(Ink.TEXT));
    graphics.setTextAlign(TextAlignment.CENTER);
    List<Spot> shown = sketch.found().isEmpty() ? sketch.outline() : sketch.found();
    for (Spot corner : shown) {
      double outX = Math.signum(corner.xMetres() - middleX) * palette.em(2.8);
      double outY = Math.signum(corner.yMetres() - middleY) * palette.em(1.07);
      text(corner.name(), x(corner.xMetres()) + outX, y(corner.yMetres()) - outY);
    }
  }

  private void columns() {
    graphics.setFill(palette.ink(Ink.QUIET));
    for (Spot column : sketch.columns()) {
      graphics.fillRect(x(column.xMetres()) - 3, y(column.yMetres()) - 4, 6, 8);
    }
  }

  /** The deviation stands at the inner side of its line, behind its shape. */
  private void span(Span span) {
    Color ink = palette.ink(span.standing());
    graphics.setStroke(ink);
    graphics.setLineWidth(span.standing() == Standing.CONFORMING ? 1.5 : 3);
    double fromX = x(span.fromXMetres());
    double toX = x(span.toXMetres());
    double fromY = y(span.fromYMetres());
    double toY = y(span.toYMetres());
    graphics.strokeLine(fromX + 6, fromY, toX - 6, toY);
    double inward =
        (fromY + toY) / 2 < graphics.getCanvas().getHeight() / 2
            ? palette.em(0.93)
            : -palette.em(0.93);
    tag(
        (fromX + toX) / 2 - palette.em(0.2) * (span.label().length() - 2),
        (fromY + toY) / 2 + inward,
        span.label(),
        span.standing());
  }

  private void arrow(Arrow arrow) {
    Color ink = palette.ink(arrow.standing());
    double fromX = x(arrow.fromXMetres());
    double fromY = y(arrow.fromYMetres());
    double toX = x(arrow.toXMetres());
    double toY = y(arrow.toYMetres());
    graphics.setStroke(ink);
    graphics.setLineWidth(arrow.standing() == Standing.CONFORMING ? 1.5 : 3);
    graphics.strokeLine(fromX, fromY, toX, toY);
    head(fromX, fromY, toX, toY, ink);
    double outward =
        fromY < graphics.getCanvas().getHeight() / 2 ? -palette.em(1.07) : palette.em(1.07);
    tag(fromX, fromY + outward, arrow.label(), arrow.standing());
  }

  private void head(double fromX, double fromY, double toX, double toY, Color ink) {
    double length = Math.hypot(toX - fromX, toY - fromY);
    if (length < 3) {
      return; // too short to have a direction that could be seen
    }
    double unitX = (toX - fromX) / length;
    double unitY = (toY - fromY) / length;
    double size = Math.min(10, length * 0.6);
    graphics.setFill(ink);
    graphics.fillPolygon(
        new double[] {toX, toX - size * (unitX + unitY / 2), toX - size * (unitX - unitY / 2)},
        new double[] {toY, toY - size * (unitY - unitX / 2), toY - size * (unitY + unitX / 2)},
        3);
  }

  private void tag(double x, double y, String label, Standing standing) {
    StandingShape.of(standing)
        .paint(graphics, palette.ink(standing), x - palette.em(0.93), y, palette.em(0.73));
    graphics.setFill(palette.ink(Ink.TEXT));
    graphics.setTextAlign(TextAlignment.LEFT);
    text(label, x - 4, y);
  }

  /** A level's number stands inside its point; where another stands there, elsewhere beside it. */
  private void level(Level level) {
    double x = x(level.xMetres());
    double y = y(level.yMetres());
    graphics.setFill(palette.ink(Ink.TEXT));
    graphics.fillOval(x - 2.5, y - 2.5, 5, 5);
    double down = y < graphics.getCanvas().getHeight() / 2 ? 1 : -1;
    double right = x < graphics.getCanvas().getWidth() / 2 ? 1 : -1;
    List<BoundingBox> places =
        List.of(
            numberAt(x + right * palette.em(1.07), y + down * palette.em(0.93)),
            numberAt(x, y - down * palette.em(1)),
            numberAt(x + right * palette.em(2.9), y + down * palette.em(0.93)),
            numberAt(x + right * palette.em(1.07), y + down * palette.em(2.1)));
    BoundingBox place =
        places.stream()
            .filter(free -> numbers.stream().noneMatch(free::intersects))
            .findFirst()
            .orElse(places.get(places.size() - 1));
    numbers.add(place);
    graphics.setTextAlign(TextAlignment.CENTER);
    text(level.label(), place.getCenterX(), place.getCenterY());
  }

  private BoundingBox numberAt(double x, double y) {
    return new BoundingBox(
        x - palette.em(0.87), y - palette.em(0.47), palette.em(1.73), palette.em(0.93));
  }

  private double x(double metres) {
    return left + (metres - lowestX) * scale;
  }

  private double y(double metres) {
    return bottom - (metres - lowestY) * scale;
  }

  /** A text with a rim of paper, so that a line behind it does not strike it through. */
  private void text(String words, double x, double y) {
    graphics.setStroke(palette.ink(Ink.PAPER));
    graphics.setLineWidth(4);
    graphics.strokeText(words, x, y);
    graphics.fillText(words, x, y);
  }
}
