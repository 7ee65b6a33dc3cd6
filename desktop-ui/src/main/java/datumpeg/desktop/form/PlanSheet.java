package datumpeg.desktop.form;

import datumpeg.analysis.building.Wall;
import datumpeg.analysis.report.drawing.Anchor;
import datumpeg.analysis.report.drawing.Box;
import datumpeg.analysis.report.drawing.Ink;
import datumpeg.analysis.report.drawing.Picture;
import datumpeg.analysis.report.drawing.Spot;
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

  /** On a sheet narrower than this the figures beside the slab do without their unit. */
  private static final double NARROW = 330;

  private final double span;
  private final double length;
  private final double scale;
  private final double left;
  private final double bottom;

  /** All that is drawn of the slab, in drawing units. */
  private final Box around;

  private PlanSheet(BuildingShape shape, Words words, String lit, double width, double height) {
    super(shape, words, lit, width, height);
    this.span = shape.spanMetres().orElse(shape.lengthMetres().orElse(1) / 2);
    this.length = shape.lengthMetres().orElse(2 * span);
    Box drawn = drawn(shape.details().corners());
    double side = Sheet.wideBesideLine(spanTold()) + LINE;
    double free = width - side - 2.5 * LINE;
    this.scale =
        Math.max(0, Math.min(free / drawn.width(), (height - 7.2 * LINE) / drawn.height()));
    this.left = side + (free - scale * drawn.width()) / 2 - scale * drawn.left();
    this.bottom = (height + scale * drawn.height()) / 2 - 1.2 * LINE + scale * drawn.top();
    double top = y(drawn.bottom());
    this.around =
        new Box(x(drawn.left()), top, x(drawn.right()) - x(drawn.left()), y(drawn.top()) - top);
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
    up("form.draw.first-end", new DrawnName.Place(around.left() - LINE, above, Anchor.END));
    up("form.draw.last-end", new DrawnName.Place(around.right() + LINE, above, Anchor.START));
    double over = Math.min(y(span), around.top()) - 1.5 * LINE;
    up("form.draw.side-b", new DrawnName.Place(x(length / 2), over, Anchor.MIDDLE));
    return sheet.picture(words.text("form.draw.plan"));
  }

  private void up(String key, DrawnName.Place first) {
    sheet.name(DrawnName.stepping(words.text(key), false, first, 6, 0, -0.3 * LINE));
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
      gridName("A" + (i + 1), x, y(0), 1);
      gridName("B" + (i + 1), x, y(span), -1);
    }
  }

  /** Outside its side, further out where the outline is in the way. */
  private void gridName(String name, double x, double y, int outward) {
    DrawnName.Place first = new DrawnName.Place(x, y + outward * 0.6 * LINE, Anchor.MIDDLE);
    sheet.name(DrawnName.stepping(name, isLitCorner(name), first, 6, 0, outward * 0.3 * LINE));
  }

  /** Whether a corner of this name is being typed. */
  boolean isLitCorner(String name) {
    return isLitIn("slab.corners." + name + "[");
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
      double y = y((hole.fromMetres() + to) / 2);
      Anchor anchor = first ? Anchor.START : Anchor.END;
      int inward = first ? 1 : -1;
      sheet.name(
          DrawnName.stepping(
                  hole.id(),
                  isLit,
                  new DrawnName.Place(x + inward * 8, y, anchor),
                  3,
                  inward * 6,
                  0)
              .orAside(0.3 * LINE, 3));
    } else {
      boolean sideA = hole.wall() == Wall.SIDE_A;
      double y = sideA ? y(0) : y(span);
      sheet.box(ink, x(hole.fromMetres()), y - 3, along, 6);
      double inward = sideA ? -LINE : LINE;
      double x = x((hole.fromMetres() + to) / 2);
      sheet.name(
          DrawnName.stepping(
              hole.id(),
              isLit,
              new DrawnName.Place(x, y + 0.8 * inward, Anchor.MIDDLE),
              3,
              0,
              0.3 * inward));
    }
  }

  private void dimensions() {
    if (shape.spanMetres().isPresent()) {
      boolean isLit = isLit("building.span");
      sheet.upright(around.left() - LINE, y(0), y(span), spanTold(), Anchor.END, isLit);
    }
    double below = around.bottom();
    bays(below + 1.7 * LINE);
    if (shape.lengthMetres().isPresent()) {
      boolean isLit = isLit("building.length");
      sheet.across(x(0), x(length), below + 3.1 * LINE, told(length), isLit);
    }
    DrawnName.Place sideA = new DrawnName.Place(x(length / 2), below + 4.3 * LINE, Anchor.MIDDLE);
    sheet.name(DrawnName.stepping(words.text("form.draw.side-a"), false, sideA, 4, 0, 0.1 * LINE));
  }

  /** Each bay with its size where that fits; bays of one size that are too narrow are counted. */
  private void bays(double y) {
    double at = shape.endLineOffsetMetres();
    boolean isLit = isLit("building.bays");
    if (at > 0 && isLit("building.end_line_offset")) {
      sheet.across(x(0), x(at), y, told(at), true);
    }
    boolean fit =
        shape.baysMetres().stream().allMatch(bay -> Sheet.wide(bay(bay)) + LINE / 2 < scale * bay);
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
      sheet.onLine(counted, new Spot((x(begin) + x(at)) / 2, y), isLit);
    }
  }

  private String spanTold() {
    return sheet.width() < NARROW ? bay(span) : told(span);
  }

  /** On a drawing in millimetres the unit goes without saying: common practice, no source. */
  private String bay(double metres) {
    return told(metres).replace(" mm", "");
  }

  /** Whether the mark of a frame has this name, and stands so near that it names the corner too. */
  boolean isNamedByGrid(String name, Spot corner) {
    List<Double> frames = shape.framesMetres();
    return IntStream.rangeClosed(1, frames.size())
        .filter(frame -> name.equals("A" + frame) || name.equals("B" + frame))
        .mapToObj(
            frame -> new Spot(x(frames.get(frame - 1)), name.charAt(0) == 'A' ? y(0) : y(span)))
        .anyMatch(grid -> Math.hypot(grid.x() - corner.x(), grid.y() - corner.y()) < 1.2 * LINE);
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
