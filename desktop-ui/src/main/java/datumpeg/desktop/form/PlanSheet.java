package datumpeg.desktop.form;

import datumpeg.analysis.building.Wall;
import datumpeg.analysis.report.drawing.Anchor;
import datumpeg.analysis.report.drawing.Box;
import datumpeg.analysis.report.drawing.Ink;
import datumpeg.analysis.report.drawing.Picture;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The plan of what is typed, with its dimensions: end 1 on the left, side A at the bottom, as all
 * plans lie. One thread.
 */
final class PlanSheet extends ShapeSheet {
  /** How many times its length the bays may go beyond the slab and still be drawn. */
  private static final double MOST_LENGTHS = 1.3;

  private final double span;
  private final double length;
  private final double scale;
  private final double left;
  private final double bottom;

  private PlanSheet(BuildingShape shape, Words words, String lit, double width, double height) {
    super(shape, words, lit, width, height);
    this.span = shape.spanMetres().orElse(shape.lengthMetres().orElse(1) / 2);
    this.length = shape.lengthMetres().orElse(2 * span);
    Box drawn = drawn(shape.details().corners());
    double side = Sheet.wideBold(told(span)) + LINE;
    double free = width - side - 2.5 * LINE;
    this.scale =
        Math.max(0, Math.min(free / drawn.width(), (height - 7.2 * LINE) / drawn.height()));
    this.left = side + (free - scale * drawn.width()) / 2 - scale * drawn.left();
    this.bottom = (height + scale * drawn.height()) / 2 - 1.2 * LINE + scale * drawn.top();
  }

  /** Slab and corners, in metres, the least y on top. */
  private Box drawn(List<PlanDetails.Corner> corners) {
    double leastX = 0;
    double leastY = 0;
    double mostX = length;
    double mostY = span;
    for (PlanDetails.Corner corner : corners) {
      leastX = Math.min(leastX, corner.place().xMetres());
      leastY = Math.min(leastY, corner.place().yMetres());
      mostX = Math.max(mostX, corner.place().xMetres());
      mostY = Math.max(mostY, corner.place().yMetres());
    }
    return new Box(leastX, leastY, mostX - leastX, mostY - leastY);
  }

  /**
   * The plan on a sheet of a size in drawing units; without span and length there is nothing on it.
   *
   * @param lit the path of the field that is being typed into
   */
  static Picture of(BuildingShape shape, Words words, String lit, double width, double height) {
    if (shape.spanMetres().isEmpty() && shape.lengthMetres().isEmpty()) {
      return new Sheet(width, height).picture("");
    }
    return new PlanSheet(shape, words, lit, width, height).drawn();
  }

  private Picture drawn() {
    PlanMarks marks = new PlanMarks(this);
    marks.outline();
    frames();
    shape.holes().forEach(this::hole);
    marks.all();
    dimensions();
    double above = y(span) - 0.6 * LINE;
    sheet.words(words.text("form.draw.first-end"), x(0) - LINE, above, Anchor.END, false);
    sheet.words(words.text("form.draw.last-end"), x(length) + LINE, above, Anchor.START, false);
    String sideB = words.text("form.draw.side-b");
    sheet.words(sideB, x(length / 2), y(span) - 1.5 * LINE, Anchor.MIDDLE, false);
    return sheet.picture(words.text("form.draw.plan"));
  }

  private void frames() {
    List<Double> frames = shape.framesMetres();
    double wide = Math.max(4, scale * shape.columnWidthMetres());
    double deep = Math.max(4, scale * shape.columnDepthMetres());
    for (int i = 0; i < frames.size(); i++) {
      double x = x(frames.get(i));
      double a = y(shape.insetMetres());
      double b = y(span - shape.insetMetres());
      sheet.line(Ink.GRID, x, a, x, b);
      sheet.box(Ink.SOLID, x - wide / 2, a - deep, wide, deep);
      sheet.box(Ink.SOLID, x - wide / 2, b, wide, deep);
      sheet.words("A" + (i + 1), x, y(0) + 0.6 * LINE, Anchor.MIDDLE, false);
      sheet.words("B" + (i + 1), x, y(span) - 0.6 * LINE, Anchor.MIDDLE, false);
    }
  }

  /** A gap in the outline with its name inside. */
  private void hole(BuildingShape.Hole hole) {
    boolean isLit = isLitIn("openings." + hole.id() + ".");
    Ink ink = isLit ? Ink.FOUND : Ink.PAPER;
    double to = hole.fromMetres() + hole.widthMetres();
    double along = scale * hole.widthMetres();
    if (hole.wall().isEnd()) {
      double x = hole.wall() == Wall.END_1 ? x(0) : x(length);
      sheet.box(ink, x - 3, y(to), 6, along);
      boolean first = hole.wall() == Wall.END_1;
      sheet.words(
          hole.id(),
          x + (first ? 8 : -8),
          y((hole.fromMetres() + to) / 2),
          first ? Anchor.START : Anchor.END,
          isLit);
    } else {
      boolean sideA = hole.wall() == Wall.SIDE_A;
      double y = sideA ? y(0) : y(span);
      sheet.box(ink, x(hole.fromMetres()), y - 3, along, 6);
      sheet.words(
          hole.id(),
          x((hole.fromMetres() + to) / 2),
          y + (sideA ? -0.8 : 0.8) * LINE,
          Anchor.MIDDLE,
          isLit);
    }
  }

  private void dimensions() {
    if (shape.spanMetres().isPresent()) {
      boolean isLit = isLit("building.span");
      sheet.upright(x(0) - LINE, y(0), y(span), told(span), Anchor.END, isLit);
    }
    bays(y(0) + 1.7 * LINE);
    if (shape.lengthMetres().isPresent()) {
      boolean isLit = isLit("building.length");
      sheet.across(x(0), x(length), y(0) + 3.1 * LINE, told(length), isLit);
    }
    sheet.words(
        words.text("form.draw.side-a"), x(length / 2), y(0) + 4.3 * LINE, Anchor.MIDDLE, false);
  }

  /** Each bay with its size where that fits; bays of one size that are too narrow are counted. */
  private void bays(double y) {
    double at = shape.endLineOffsetMetres();
    boolean isLit = isLit("building.bays");
    if (at > 0 && isLit("building.end_line_offset")) {
      sheet.across(x(0), x(at), y, told(at), true);
    }
    boolean fit = shape.baysMetres().stream().allMatch(bay -> Sheet.wide(bay(bay)) < scale * bay);
    double begin = at;
    for (double bay : shape.baysMetres()) {
      if (at + bay > length * MOST_LENGTHS) {
        return; // far beside the sheet: the sentence at the field says how much too long
      }
      sheet.across(x(at), x(at + bay), y, fit ? bay(bay) : "", isLit);
      at += bay;
    }
    if (!fit && shape.baysMetres().stream().distinct().count() == 1) {
      String counted = shape.baysMetres().size() + " × " + bay(shape.baysMetres().get(0));
      sheet.words(counted, (x(begin) + x(at)) / 2, y, Anchor.MIDDLE, isLit);
    }
  }

  /** On a drawing in millimetres the unit goes without saying: common practice, no source. */
  private String bay(double metres) {
    return told(metres).replace(" mm", "");
  }

  /** Whether a frame has its mark of this name on the sheet. */
  boolean isGridName(String name) {
    int frames = shape.framesMetres().size();
    return IntStream.rangeClosed(1, frames)
        .anyMatch(frame -> name.equals("A" + frame) || name.equals("B" + frame));
  }

  double spanMetres() {
    return span;
  }

  double lengthMetres() {
    return length;
  }

  double x(double metres) {
    return left + scale * metres;
  }

  double y(double metres) {
    return bottom - scale * metres;
  }
}
