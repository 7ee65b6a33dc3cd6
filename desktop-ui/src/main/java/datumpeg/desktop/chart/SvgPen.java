package datumpeg.desktop.chart;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.Palette;
import datumpeg.desktop.control.StandingShape;
import datumpeg.desktop.text.Standing;
import java.util.Locale;
import javafx.scene.paint.Color;

/** Draws a picture as SVG 1.1 text, in the inks of a palette. */
public final class SvgPen implements Pen {
  /** Of a sans-serif letter on average, in heights of a letter. */
  private static final double LETTER_WIDTH = 0.57;

  private final double width;
  private final double height;
  private final Palette palette;
  private final StringBuilder body = new StringBuilder();

  /** A picture of so many pixels on the palette's paper. */
  public SvgPen(double width, double height, Palette palette) {
    this.width = width;
    this.height = height;
    this.palette = palette;
    block(0, 0, width, height, Ink.PAPER);
  }

  /**
   * The picture.
   *
   * @param title what it shows, for who cannot see it
   */
  public String picture(String title) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        + written(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0f\" height=\"%.0f\""
                + " viewBox=\"0 0 %.0f %.0f\" role=\"img\" font-family=\"sans-serif\""
                + " font-size=\"%.1f\">\n",
            width, height, width, height, palette.em(1))
        + "<title>"
        + escaped(title)
        + "</title>\n"
        + body
        + "</svg>\n";
  }

  @Override
  public double width() {
    return width;
  }

  @Override
  public double height() {
    return height;
  }

  @Override
  public double em(double times) {
    return palette.em(times);
  }

  @Override
  public void line(double x1, double y1, double x2, double y2, Ink ink, double thickness) {
    line(x1, y1, x2, y2, ink, thickness, "");
  }

  @Override
  public void dashes(double x1, double y1, double x2, double y2, Ink ink, double thickness) {
    line(x1, y1, x2, y2, ink, thickness, " stroke-dasharray=\"9 5\"");
  }

  private void line(
      double x1, double y1, double x2, double y2, Ink ink, double thickness, String more) {
    body.append(
        written(
            "<line x1=\"%.2f\" y1=\"%.2f\" x2=\"%.2f\" y2=\"%.2f\" stroke=\"%s\""
                + " stroke-width=\"%.1f\"%s/>\n",
            x1, y1, x2, y2, colour(ink), thickness, more));
  }

  @Override
  public void block(double x, double y, double blockWidth, double blockHeight, Ink ink) {
    body.append(
        written(
            "<rect x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" fill=\"%s\"/>\n",
            x, y, blockWidth, blockHeight, colour(ink)));
  }

  @Override
  public void text(String text, double x, double y, Ink ink, Align align) {
    String anchor =
        switch (align) {
          case LEFT -> "start";
          case MIDDLE -> "middle";
          case RIGHT -> "end";
        };
    body.append(
        written(
            "<text x=\"%.2f\" y=\"%.2f\" fill=\"%s\" text-anchor=\"%s\" dy=\"0.35em\">%s</text>\n",
            x, y, colour(ink), anchor, escaped(text)));
  }

  @Override
  public void words(String text, double x, double y, Ink ink, Weight weight, double widest) {
    letters(text, x, y, ink, weight == Weight.BOLD ? " font-weight=\"bold\"" : "", widest);
  }

  @Override
  public void label(String text, double x, double y, Ink ink, double widest) {
    letters(text, x, y, ink, " text-anchor=\"middle\"", widest);
  }

  private void letters(String text, double x, double y, Ink ink, String how, double widest) {
    boolean narrowed = text.length() * em(LETTER_WIDTH) > widest;
    body.append(
        written(
            "<text x=\"%.2f\" y=\"%.2f\" fill=\"%s\" dy=\"0.35em\"%s%s>%s</text>\n",
            x,
            y,
            colour(ink),
            how,
            narrowed
                ? written(" textLength=\"%.0f\" lengthAdjust=\"spacingAndGlyphs\"", widest)
                : "",
            escaped(text)));
  }

  @Override
  public void standing(Standing standing, double x, double y, double size) {
    body.append(
        written(
            "<path transform=\"translate(%.2f %.2f) scale(%.4f)\" fill-rule=\"evenodd\""
                + " fill=\"%s\" d=\"%s\"/>\n",
            x - size / 2,
            y - size / 2,
            size / StandingShape.BOX,
            colour(Ink.of(standing)),
            StandingShape.of(standing).path()));
  }

  @Override
  public void mark(Mark mark, double x, double y, double size, Ink ink) {
    double half = size / 2;
    body.append(
        switch (mark) {
          case PLAIN ->
              written(
                  "<circle cx=\"%.2f\" cy=\"%.2f\" r=\"%.2f\" fill=\"%s\"/>\n",
                  x, y, half, colour(ink));
          case IN_A_RUN ->
              written(
                  "<rect x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" fill=\"%s\""
                      + " stroke=\"%s\" stroke-width=\"2\"/>\n",
                  x - half, y - half, size, size, colour(Ink.PAPER), colour(ink));
          case MEAN ->
              written(
                  "<circle cx=\"%.2f\" cy=\"%.2f\" r=\"%.2f\" fill=\"none\" stroke=\"%s\""
                      + " stroke-width=\"2\"/>\n",
                  x, y, half, colour(ink));
          case BEYOND ->
              written(
                  "<polygon points=\"%.2f,%.2f %.2f,%.2f %.2f,%.2f %.2f,%.2f\" fill=\"%s\"/>\n",
                  x, y - size, x + size, y, x, y + size, x - size, y, colour(ink));
        });
  }

  private String colour(Ink ink) {
    Color colour = palette.ink(ink);
    return written(
        "#%02x%02x%02x",
        Math.round(colour.getRed() * 255),
        Math.round(colour.getGreen() * 255),
        Math.round(colour.getBlue() * 255));
  }

  private static String written(String form, Object... values) {
    return String.format(Locale.ROOT, form, values);
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
