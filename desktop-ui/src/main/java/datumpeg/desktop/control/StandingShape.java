package datumpeg.desktop.control;

import datumpeg.desktop.text.Standing;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.shape.FillRule;
import javafx.scene.shape.SVGPath;

/**
 * The shape of each standing. The shapes differ in outline, so that they are told apart without
 * colour; the colours are the theme's.
 */
public enum StandingShape {
  DISC("M8 1A7 7 0 1 1 8 15A7 7 0 1 1 8 1Z"),
  BARRED_SQUARE("M1 1H15V15H1ZM4 6H12V10H4Z"),
  HALF_RING("M8 1A7 7 0 1 1 8 15A7 7 0 1 1 8 1ZM8 3.2A4.8 4.8 0 1 0 8 12.8Z"),
  HOURGLASS("M2 1H14L9.5 8L14 15H2L6.5 8Z"),
  RING("M8 1A7 7 0 1 1 8 15A7 7 0 1 1 8 1ZM8 3.2A4.8 4.8 0 1 1 8 12.8A4.8 4.8 0 1 1 8 3.2Z"),
  TWO_BARS("M1 2H15V6H1ZM1 10H15V14H1Z");

  /** The side of the square that the outlines are drawn in. */
  public static final double BOX = 16;

  private final String path;

  StandingShape(String path) {
    this.path = path;
  }

  public static StandingShape of(Standing standing) {
    return switch (standing) {
      case CONFORMING -> DISC;
      case NONCONFORMING -> BARRED_SQUARE;
      case UNDECIDED -> HALF_RING;
      case STALE -> HOURGLASS;
      case NOT_MEASURED -> RING;
      case NO_LIMIT -> TWO_BARS;
    };
  }

  /** The outline as SVG 1.1 path data; what is enclosed twice is left open. */
  public String path() {
    return path;
  }

  SVGPath outline() {
    SVGPath outline = new SVGPath();
    outline.setFillRule(FillRule.EVEN_ODD);
    outline.setContent(path);
    return outline;
  }

  /** Paints the shape into a drawing, its middle at a place. */
  public void paint(GraphicsContext graphics, Color ink, double x, double y, double size) {
    graphics.save();
    graphics.translate(x - size / 2, y - size / 2);
    graphics.scale(size / BOX, size / BOX);
    graphics.setFillRule(FillRule.EVEN_ODD);
    graphics.setFill(ink);
    graphics.beginPath();
    graphics.appendSVGPath(path);
    graphics.fill();
    graphics.restore();
  }
}
