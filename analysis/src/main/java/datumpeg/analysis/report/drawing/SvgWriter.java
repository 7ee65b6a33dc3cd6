package datumpeg.analysis.report.drawing;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.report.writing.Markup;
import java.util.ArrayList;
import java.util.List;

/** Writes a picture as SVG text. One thread. */
final class SvgWriter {
  private static final double MILLIMETRES_PER_UNIT = 0.25;

  private final Markup body = new Markup();

  Markup write(Picture picture) {
    picture.marks().forEach(this::mark);
    return new Markup()
        .open(
            "svg",
            "xmlns",
            "http://www.w3.org/2000/svg",
            "viewBox",
            "0 "
                + number(picture.top())
                + " "
                + number(picture.width())
                + " "
                + number(picture.height()),
            "width",
            number(picture.width() * MILLIMETRES_PER_UNIT) + "mm",
            "height",
            number(picture.height() * MILLIMETRES_PER_UNIT) + "mm",
            "role",
            "img",
            "aria-label",
            picture.description(),
            "font-family",
            "system-ui, 'Segoe UI', Roboto, 'DejaVu Sans', Arial, sans-serif",
            "font-size",
            number(Mark.FONT_SIZE))
        .append(body)
        .close();
  }

  private void mark(Mark mark) {
    if (mark instanceof Mark.Line line) {
      shape("line", line.ink(), ends(line));
    } else if (mark instanceof Mark.Polygon polygon) {
      shape("polygon", polygon.ink(), List.of("points", points(polygon.corners())));
    } else if (mark instanceof Mark.Rectangle rectangle) {
      shape("rect", rectangle.ink(), sides(rectangle.box()));
    } else if (mark instanceof Mark.Circle circle) {
      shape("circle", circle.ink(), circle(circle));
    } else if (mark instanceof Mark.Ellipse ellipse) {
      shape("ellipse", ellipse.ink(), ellipse(ellipse));
    } else if (mark instanceof Mark.Words words) {
      words(words);
    }
  }

  private static List<String> ends(Mark.Line line) {
    return List.of(
        "x1",
        number(line.from().x()),
        "y1",
        number(line.from().y()),
        "x2",
        number(line.to().x()),
        "y2",
        number(line.to().y()));
  }

  private static List<String> sides(Box box) {
    return List.of(
        "x",
        number(box.left()),
        "y",
        number(box.top()),
        "width",
        number(box.width()),
        "height",
        number(box.height()));
  }

  private static List<String> circle(Mark.Circle circle) {
    return List.of(
        "cx",
        number(circle.centre().x()),
        "cy",
        number(circle.centre().y()),
        "r",
        number(circle.radius()));
  }

  private static List<String> ellipse(Mark.Ellipse ellipse) {
    String x = number(ellipse.centre().x());
    String y = number(ellipse.centre().y());
    return List.of(
        "cx",
        x,
        "cy",
        y,
        "rx",
        number(ellipse.firstHalf()),
        "ry",
        number(ellipse.secondHalf()),
        "transform",
        "rotate(" + number(ellipse.degrees()) + " " + x + " " + y + ")");
  }

  private void words(Mark.Words words) {
    body.element(
        "text",
        words.text(),
        "x",
        number(words.baseline().x()),
        "y",
        number(words.baseline().y()),
        "text-anchor",
        words.anchor().text(),
        "font-weight",
        words.bold() ? "700" : "400",
        "fill",
        words.reversed() ? "#fff" : "#000");
  }

  private void shape(String element, Ink ink, List<String> geometry) {
    List<String> attributes = new ArrayList<>(geometry);
    attributes.addAll(ink.attributes());
    body.empty(element, attributes.toArray(String[]::new));
  }

  private static String points(List<Spot> corners) {
    return String.join(
        " ", corners.stream().map(spot -> number(spot.x()) + "," + number(spot.y())).toList());
  }

  private static String number(double value) {
    String text = LengthDisplay.decimal(value, 2);
    return text.replaceAll("\\.?0+$", "");
  }
}
