package datumpeg.desktop.form;

import datumpeg.analysis.building.Wall;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.report.drawing.Anchor;
import datumpeg.analysis.report.drawing.Ink;
import datumpeg.analysis.report.drawing.Picture;
import datumpeg.analysis.report.drawing.Spot;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A portal frame of what is typed, with its dimensions, as seen from outside end 1: side A on the
 * right. One thread.
 */
final class PortalSheet extends ShapeSheet {
  private final double span;
  private final double eave;
  private final double ridge;
  private final double scale;
  private final double right;
  private final double bottom;

  private PortalSheet(BuildingShape shape, Words words, String lit, double width, double height) {
    super(shape, words, lit, width, height);
    this.span = shape.spanMetres().orElse(2 * shape.eaveHeightMetres().orElse(1));
    this.eave = shape.eaveHeightMetres().orElse(span / 3);
    this.ridge = shape.ridgeHeightMetres().orElse(eave);
    double side = Sheet.wideBesideLine(told(span)) + LINE;
    double high = ridge + shape.rafterDepthMetres();
    double free = width - 2 * side;
    this.scale = Math.max(0, Math.min(free / span, (height - 5.2 * LINE) / high));
    this.right = (width + scale * span) / 2;
    this.bottom = (height + scale * high) / 2 - 1.2 * LINE;
  }

  /**
   * The frame on a sheet of a size in drawing units; without span and eave height there is nothing
   * on it.
   *
   * @param lit the path of the field that is being typed into
   */
  static Picture of(BuildingShape shape, Words words, String lit, double width, double height) {
    if (shape.spanMetres().isEmpty() && shape.eaveHeightMetres().isEmpty()) {
      return new Sheet(width, height).picture("");
    }
    return new PortalSheet(shape, words, lit, width, height).drawn();
  }

  private Picture drawn() {
    sheet.line(Ink.DESIGN, x(-span * 0.03), y(0), x(span * 1.03), y(0));
    shape.holes().stream().filter(hole -> hole.wall() == Wall.END_1).forEach(this::hole);
    column(shape.insetMetres(), shape.columnLineMetres());
    column(span - shape.columnLineMetres(), span - shape.insetMetres());
    if (shape.gable() && shape.pitchRadians().isPresent()) {
      rafter(shape.columnLineMetres());
      rafter(span - shape.columnLineMetres());
    } else {
      levelBeam();
    }
    dimensions();
    side("A", x(shape.columnLineMetres()));
    side("B", x(span - shape.columnLineMetres()));
    return sheet.picture(words.text("form.draw.portal"));
  }

  private void side(String name, double x) {
    DrawnName.Place below = new DrawnName.Place(x, y(0) + 0.7 * LINE, Anchor.MIDDLE);
    sheet.name(DrawnName.stepping(name, true, below, 4, 0, 0.1 * LINE));
  }

  private void column(double from, double to) {
    double wide = Math.max(3, scale * (to - from));
    sheet.box(
        isLit("sections.column_depth") ? Ink.FOUND : Ink.DESIGN,
        (x(from) + x(to)) / 2 - wide / 2,
        y(eave),
        wide,
        scale * eave);
  }

  private void rafter(double foot) {
    double up = shape.rafterDepthMetres() / StrictMath.cos(shape.pitchRadians().orElse(0));
    sheet.outline(
        isLit("sections.rafter_depth", "building.pitch") ? Ink.FOUND : Ink.DESIGN,
        List.of(
            new Spot(x(foot), y(eave)),
            new Spot(x(span / 2), y(ridge)),
            new Spot(x(span / 2), y(ridge + up)),
            new Spot(x(foot), y(eave + up))));
  }

  /** A mono roof: the drawing does not say which side is the high one. */
  private void levelBeam() {
    double deep = Math.max(3, scale * shape.rafterDepthMetres());
    sheet.box(Ink.DESIGN, x(span), y(eave) - deep, scale * span, deep);
  }

  private void hole(BuildingShape.Hole hole) {
    boolean isLit = isLitIn("openings." + hole.id() + ".");
    double high = hole.heightMetres().orElse(0);
    double far = x(hole.fromMetres() + hole.widthMetres());
    sheet.box(
        isLit ? Ink.FOUND : Ink.LIMIT, far, y(high), scale * hole.widthMetres(), scale * high);
    double middle = (far + x(hole.fromMetres())) / 2;
    DrawnName.Place upper = new DrawnName.Place(middle, y(high * 0.75), Anchor.MIDDLE);
    sheet.name(DrawnName.stepping(hole.id(), isLit, upper, 2, 0, -0.3 * LINE));
  }

  private void dimensions() {
    if (shape.eaveHeightMetres().isPresent()) {
      sheet.upright(
          x(span) - LINE, y(0), y(eave), told(eave), Anchor.END, isLit("building.eave_height"));
    }
    if (shape.ridgeHeightMetres().isPresent()) {
      sheet.upright(x(0) + LINE, y(0), y(ridge), told(ridge), Anchor.START, false);
    }
    if (shape.spanMetres().isPresent()) {
      sheet.across(x(span), x(0), y(0) + 2 * LINE, told(span), isLit("building.span"));
      double line = shape.columnLineMetres();
      if (line > 0 && span > 2 * line) {
        sheet.across(x(span - line), x(line), y(eave * 0.35), told(span - 2 * line), false);
      }
    }
    pitch(shape.pitchRadians());
  }

  private void pitch(OptionalDouble radians) {
    if (radians.isPresent()) {
      String degrees = LengthDisplay.decimal(StrictMath.toDegrees(radians.getAsDouble()), 1);
      double y = y((eave + ridge) / 2 + shape.rafterDepthMetres()) - 0.7 * LINE;
      DrawnName.Place above = new DrawnName.Place(x(span * 0.77), y, Anchor.END);
      sheet.name(
          DrawnName.stepping(degrees + "°", isLit("building.pitch"), above, 4, 0, -0.3 * LINE));
    }
  }

  /** Side A is on the right. */
  private double x(double fromSideA) {
    return right - scale * fromSideA;
  }

  private double y(double metres) {
    return bottom - scale * metres;
  }
}
