package datumpeg.desktop.measure;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.Palette;
import datumpeg.desktop.measure.TargetSketch.Dot;
import datumpeg.desktop.measure.TargetSketch.Line;
import datumpeg.desktop.measure.TargetSketch.Name;
import datumpeg.desktop.measure.TargetSketch.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import javafx.geometry.BoundingBox;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.text.TextAlignment;

/**
 * Paints where a target lies: the building in thin lines, what is still open in dashes, the target
 * in a thick line with rings at its ends, so that no colour is needed to see it.
 */
final class TargetPainter {
  private final TargetSketch sketch;
  private final GraphicsContext graphics;
  private final Palette palette;
  private final double em;
  private final List<BoundingBox> named = new ArrayList<>();
  private final double scale;
  private final double left;
  private final double bottom;
  private final double lowestX;
  private final double lowestY;

  TargetPainter(TargetSketch sketch, GraphicsContext graphics, Palette palette) {
    this.sketch = sketch;
    this.graphics = graphics;
    this.palette = palette;
    this.em = palette.em(1);
    lowestX = Math.min(xs().min().orElse(0), 0);
    lowestY = Math.min(ys().min().orElse(0), 0);
    double wide = Math.max(1e-3, xs().max().orElse(1) - lowestX);
    double high = Math.max(1e-3, ys().max().orElse(1) - lowestY);
    double width = graphics.getCanvas().getWidth();
    double height = graphics.getCanvas().getHeight();
    scale = Math.max(0, Math.min((width - 11 * em) / wide, (height - 4.5 * em) / high));
    left = (width - wide * scale) / 2;
    bottom = (height + high * scale) / 2;
  }

  private DoubleStream xs() {
    return sketch.lines().stream()
        .flatMapToDouble(line -> DoubleStream.of(line.fromX(), line.toX()));
  }

  private DoubleStream ys() {
    return sketch.lines().stream()
        .flatMapToDouble(line -> DoubleStream.of(line.fromY(), line.toY()));
  }

  void paint() {
    graphics.setTextBaseline(VPos.CENTER);
    sketch.lines().forEach(this::line);
    sketch.dots().forEach(this::dot);
    graphics.setFont(palette.bold(1));
    sketch.names().forEach(this::name);
    graphics.setFont(palette.font(1));
    graphics.setTextAlign(TextAlignment.LEFT);
    graphics.setFill(palette.ink(Ink.QUIET));
    if (graphics.getCanvas().getHeight() > 14 * em) {
      graphics.fillText(sketch.view(), em * 0.7, em, graphics.getCanvas().getWidth() - 1.4 * em);
    }
  }

  private void line(Line line) {
    graphics.setStroke(
        line.role() == Role.LIT
            ? palette.ink(Ink.ACCENT)
            : line.role() == Role.OPEN ? palette.ink(Ink.QUIET) : palette.ink(Ink.TEXT));
    graphics.setLineWidth(line.role() == Role.LIT ? em * 0.45 : line.role() == Role.OPEN ? 1 : 1.6);
    if (line.role() == Role.OPEN) {
      graphics.setLineDashes(3, 6);
    }
    graphics.strokeLine(x(line.fromX()), y(line.fromY()), x(line.toX()), y(line.toY()));
    graphics.setLineDashes();
  }

  private void dot(Dot dot) {
    double half =
        switch (dot.role()) {
          case BUILDING -> em * 0.2;
          case OPEN -> em * 0.3;
          case LIT -> Math.min(em * 0.75, graphics.getCanvas().getHeight() / 16);
        };
    double x = x(dot.x()) - half;
    double y = y(dot.y()) - half;
    switch (dot.role()) {
      case BUILDING -> {
        graphics.setFill(palette.ink(Ink.TEXT));
        graphics.fillRect(x, y, 2 * half, 2 * half);
      }
      case OPEN -> {
        graphics.setStroke(palette.ink(Ink.QUIET));
        graphics.setLineWidth(1.5);
        graphics.strokeOval(x, y, 2 * half, 2 * half);
      }
      case LIT -> {
        graphics.setFill(palette.ink(Ink.PAPER));
        graphics.fillOval(x, y, 2 * half, 2 * half);
        graphics.setStroke(palette.ink(Ink.ACCENT));
        graphics.setLineWidth(em * 0.35);
        graphics.strokeOval(x, y, 2 * half, 2 * half);
      }
    }
  }

  /** A name that would stand on another is left out; the spoken text has the target's. */
  private void name(Name name) {
    double x = x(name.x()) + name.right() * em;
    double y = y(name.y()) - name.up() * em * 1.5;
    double wide = em * 0.7 * name.text().length();
    double left = name.right() == 0 ? x - wide / 2 : name.right() > 0 ? x : x - wide;
    BoundingBox box = new BoundingBox(left, y - em / 2, wide, em);
    if (named.stream().anyMatch(box::intersects)) {
      return;
    }
    named.add(box);
    graphics.setFill(palette.ink(Ink.TEXT));
    graphics.setTextAlign(
        name.right() == 0
            ? TextAlignment.CENTER
            : name.right() > 0 ? TextAlignment.LEFT : TextAlignment.RIGHT);
    graphics.fillText(name.text(), x, y);
  }

  private double x(double metres) {
    return left + (metres - lowestX) * scale;
  }

  private double y(double metres) {
    return bottom - (metres - lowestY) * scale;
  }
}
