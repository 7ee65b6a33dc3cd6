package datumpeg.desktop.chart;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.Palette;
import datumpeg.desktop.control.StandingShape;
import datumpeg.desktop.text.Standing;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.text.TextAlignment;

/** Draws on a canvas in the inks of the theme. */
public final class CanvasPen implements Pen {
  private final GraphicsContext graphics;
  private final Palette palette;

  /** A pen for a canvas that is cleared already. */
  public CanvasPen(GraphicsContext graphics, Palette palette) {
    this.graphics = graphics;
    this.palette = palette;
    graphics.setFont(palette.font(1));
    graphics.setTextBaseline(VPos.CENTER);
  }

  @Override
  public double width() {
    return graphics.getCanvas().getWidth();
  }

  @Override
  public double height() {
    return graphics.getCanvas().getHeight();
  }

  @Override
  public double em(double times) {
    return palette.em(times);
  }

  @Override
  public void line(double x1, double y1, double x2, double y2, Ink ink, double thickness) {
    graphics.setStroke(palette.ink(ink));
    graphics.setLineWidth(thickness);
    graphics.strokeLine(x1, y1, x2, y2);
  }

  @Override
  public void dashes(double x1, double y1, double x2, double y2, Ink ink, double thickness) {
    graphics.setLineDashes(9, 5);
    line(x1, y1, x2, y2, ink, thickness);
    graphics.setLineDashes();
  }

  @Override
  public void block(double x, double y, double blockWidth, double blockHeight, Ink ink) {
    graphics.setFill(palette.ink(ink));
    graphics.fillRect(x, y, blockWidth, blockHeight);
  }

  @Override
  public void text(String text, double x, double y, Ink ink, Align align) {
    graphics.setFill(palette.ink(ink));
    graphics.setTextAlign(
        switch (align) {
          case LEFT -> TextAlignment.LEFT;
          case MIDDLE -> TextAlignment.CENTER;
          case RIGHT -> TextAlignment.RIGHT;
        });
    graphics.fillText(text, x, y);
  }

  @Override
  public void words(String text, double x, double y, Ink ink, Weight weight, double widest) {
    graphics.setFont(weight == Weight.BOLD ? palette.bold(1) : palette.font(1));
    graphics.setFill(palette.ink(ink));
    graphics.setTextAlign(TextAlignment.LEFT);
    graphics.fillText(text, x, y, widest);
    graphics.setFont(palette.font(1));
  }

  @Override
  public void label(String text, double x, double y, Ink ink, double widest) {
    graphics.setFill(palette.ink(ink));
    graphics.setTextAlign(TextAlignment.CENTER);
    graphics.fillText(text, x, y, widest);
  }

  @Override
  public void standing(Standing standing, double x, double y, double size) {
    StandingShape.of(standing).paint(graphics, palette.ink(standing), x, y, size);
  }

  @Override
  public void mark(Mark mark, double x, double y, double size, Ink ink) {
    double half = size / 2;
    graphics.setFill(palette.ink(ink));
    switch (mark) {
      case PLAIN -> graphics.fillOval(x - half, y - half, size, size);
      case IN_A_RUN -> {
        graphics.setStroke(palette.ink(ink));
        graphics.setLineWidth(2);
        graphics.setFill(palette.ink(Ink.PAPER));
        graphics.fillRect(x - half, y - half, size, size);
        graphics.strokeRect(x - half, y - half, size, size);
      }
      case MEAN -> {
        graphics.setStroke(palette.ink(ink));
        graphics.setLineWidth(2);
        graphics.strokeOval(x - half, y - half, size, size);
      }
      case BEYOND ->
          graphics.fillPolygon(
              new double[] {x, x + size, x, x - size}, new double[] {y - size, y, y + size, y}, 4);
    }
  }
}
