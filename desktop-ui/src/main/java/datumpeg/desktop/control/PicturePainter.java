package datumpeg.desktop.control;

import datumpeg.analysis.report.drawing.Anchor;
import datumpeg.analysis.report.drawing.Box;
import datumpeg.analysis.report.drawing.Mark;
import datumpeg.analysis.report.drawing.Picture;
import datumpeg.analysis.report.drawing.Spot;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;

/** Paints a picture of the analysis, as large as there is room, in the inks of the theme. */
public final class PicturePainter {
  private final Picture picture;
  private final GraphicsContext graphics;
  private final Palette palette;

  public PicturePainter(Picture picture, GraphicsContext graphics, Palette palette) {
    this.picture = picture;
    this.graphics = graphics;
    this.palette = palette;
  }

  public void paint() {
    double width = graphics.getCanvas().getWidth();
    double height = graphics.getCanvas().getHeight();
    double scale = Math.min(width / picture.width(), height / picture.height());
    graphics.save();
    graphics.translate(
        (width - scale * picture.width()) / 2,
        (height - scale * picture.height()) / 2 - scale * picture.top());
    graphics.scale(scale, scale);
    graphics.setTextBaseline(VPos.BASELINE);
    picture.marks().forEach(this::mark);
    graphics.restore();
  }

  private void mark(Mark mark) {
    if (mark instanceof Mark.Line line) {
      pen(line.ink());
      graphics.strokeLine(line.from().x(), line.from().y(), line.to().x(), line.to().y());
    } else if (mark instanceof Mark.Polygon polygon) {
      polygon(polygon);
    } else if (mark instanceof Mark.Rectangle rectangle) {
      Box box = rectangle.box();
      if (pen(rectangle.ink())) {
        graphics.fillRect(box.left(), box.top(), box.width(), box.height());
      }
      if (rectangle.ink().width() > 0) {
        graphics.strokeRect(box.left(), box.top(), box.width(), box.height());
      }
    } else if (mark instanceof Mark.Circle circle) {
      oval(circle.ink(), circle.centre(), circle.radius(), circle.radius());
    } else if (mark instanceof Mark.Ellipse ellipse) {
      ellipse(ellipse);
    } else if (mark instanceof Mark.Words words) {
      words(words);
    }
  }

  private void polygon(Mark.Polygon polygon) {
    double[] xs = polygon.corners().stream().mapToDouble(Spot::x).toArray();
    double[] ys = polygon.corners().stream().mapToDouble(Spot::y).toArray();
    if (pen(polygon.ink())) {
      graphics.fillPolygon(xs, ys, xs.length);
    }
    graphics.strokePolygon(xs, ys, xs.length);
  }

  private void ellipse(Mark.Ellipse ellipse) {
    graphics.save();
    graphics.translate(ellipse.centre().x(), ellipse.centre().y());
    graphics.rotate(ellipse.degrees());
    oval(ellipse.ink(), new Spot(0, 0), ellipse.firstHalf(), ellipse.secondHalf());
    graphics.restore();
  }

  private void oval(
      datumpeg.analysis.report.drawing.Ink ink, Spot centre, double halfWide, double halfHigh) {
    double left = centre.x() - halfWide;
    double top = centre.y() - halfHigh;
    if (pen(ink)) {
      graphics.fillOval(left, top, 2 * halfWide, 2 * halfHigh);
    }
    graphics.strokeOval(left, top, 2 * halfWide, 2 * halfHigh);
  }

  private void words(Mark.Words words) {
    FontWeight weight = words.bold() ? FontWeight.BOLD : FontWeight.NORMAL;
    graphics.setFont(Font.font(null, weight, Mark.FONT_SIZE));
    graphics.setFill(palette.ink(words.reversed() ? Ink.PAPER : Ink.TEXT));
    graphics.setTextAlign(
        words.anchor() == Anchor.START
            ? TextAlignment.LEFT
            : words.anchor() == Anchor.MIDDLE ? TextAlignment.CENTER : TextAlignment.RIGHT);
    graphics.fillText(words.text(), words.baseline().x(), words.baseline().y());
  }

  /** Takes up an ink; true if it fills areas. */
  private boolean pen(datumpeg.analysis.report.drawing.Ink ink) {
    graphics.setStroke(ink.width() > 0 ? palette.ink(Ink.TEXT) : Color.TRANSPARENT);
    graphics.setLineWidth(ink.width());
    graphics.setLineDashes(ink.dashLengths().stream().mapToDouble(Double::doubleValue).toArray());
    switch (ink.fill()) {
      case FULL -> graphics.setFill(palette.ink(Ink.TEXT));
      case HALF -> graphics.setFill(palette.ink(Ink.TEXT).interpolate(palette.ink(Ink.PAPER), 0.7));
      case PAPER -> graphics.setFill(palette.ink(Ink.PAPER));
      case NONE -> {
        return false;
      }
    }
    return true;
  }
}
