package datumpeg.desktop.measure;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.Palette;
import datumpeg.desktop.measure.MeasurePage.Bar;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.text.TextAlignment;

/**
 * Paints a live value between its limits: thin posts at the limits, thick brackets so far in as is
 * inside for sure, a wedge where the value stands; beyond the ends the wedge lies on its side. The
 * ends say which way they are.
 */
final class BarPainter {
  private static final double REACH = 1.6;

  private final Bar bar;
  private final GraphicsContext graphics;
  private final Palette palette;
  private final double middleX;
  private final double middleY;
  private final double perMillimetre;
  private final double half;

  BarPainter(Bar bar, GraphicsContext graphics, Palette palette) {
    this.bar = bar;
    this.graphics = graphics;
    this.palette = palette;
    double width = graphics.getCanvas().getWidth();
    double height = graphics.getCanvas().getHeight();
    middleX = width / 2;
    middleY = height / 2;
    half = height * 0.36;
    perMillimetre = (width / 2 - half) / (REACH * bar.limitMillimetres());
  }

  void paint() {
    double inside = Math.max(0, bar.insideMillimetres()) * perMillimetre;
    double limit = bar.limitMillimetres() * perMillimetre;
    graphics.setFill(palette.ink(Ink.QUIET).interpolate(palette.ink(Ink.PAPER), 0.75));
    graphics.fillRect(middleX - inside, middleY - half * 0.6, 2 * inside, half * 1.2);
    graphics.setStroke(palette.ink(Ink.QUIET));
    graphics.setLineWidth(1);
    graphics.strokeLine(half, middleY, 2 * middleX - half, middleY);
    post(0, half * 0.4);
    post(limit, half);
    post(-limit, half);
    if (inside > 0) {
      bracket(inside, -1);
      bracket(-inside, 1);
    }
    end(bar.leftWords(), half * 0.3, TextAlignment.LEFT);
    end(bar.rightWords(), 2 * middleX - half * 0.3, TextAlignment.RIGHT);
    bar.deviationMillimetres().map(off -> bar.isMirrored() ? -off : off).ifPresent(this::wedge);
  }

  /** Which way an end is, above the line; its last word where there is no room for all. */
  private void end(String toward, double x, TextAlignment align) {
    double size = Math.min(palette.em(0.87), half * 0.75);
    double room = middleX - bar.limitMillimetres() * perMillimetre - half * 0.5;
    boolean fits = toward.length() * size * 0.6 < room;
    graphics.setFont(palette.font(size / palette.em(1)));
    graphics.setFill(palette.ink(Ink.TEXT));
    graphics.setTextAlign(align);
    graphics.setTextBaseline(VPos.CENTER);
    graphics.fillText(
        fits ? toward : toward.substring(toward.lastIndexOf(' ') + 1), x, middleY - half * 0.7);
  }

  private void post(double right, double high) {
    graphics.setStroke(palette.ink(Ink.QUIET));
    graphics.setLineWidth(1.5);
    graphics.strokeLine(middleX + right, middleY - high, middleX + right, middleY + high);
  }

  private void bracket(double right, int inward) {
    double x = middleX + right;
    double foot = inward * half * 0.3;
    graphics.setStroke(palette.ink(Ink.TEXT));
    graphics.setLineWidth(4);
    graphics.strokePolyline(
        new double[] {x + foot, x, x, x + foot},
        new double[] {middleY - half, middleY - half, middleY + half, middleY + half},
        4);
  }

  private void wedge(double millimetres) {
    double reach = REACH * bar.limitMillimetres();
    graphics.setFill(palette.ink(Ink.TEXT));
    if (Math.abs(millimetres) > reach) {
      double sign = Math.signum(millimetres);
      double x = middleX + sign * (middleX - 2);
      graphics.fillPolygon(
          new double[] {x, x - sign * half, x - sign * half},
          new double[] {middleY, middleY - half * 0.7, middleY + half * 0.7},
          3);
      return;
    }
    double x = middleX + millimetres * perMillimetre;
    double wide = half * 0.45;
    graphics.fillPolygon(
        new double[] {x - wide, x + wide, x},
        new double[] {middleY - half * 1.25, middleY - half * 1.25, middleY + half * 0.2},
        3);
    graphics.fillRect(x - 2, middleY - half * 0.2, 4, half * 1.2);
  }
}
