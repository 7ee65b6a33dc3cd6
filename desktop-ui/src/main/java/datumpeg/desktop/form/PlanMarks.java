package datumpeg.desktop.form;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.report.drawing.Anchor;
import datumpeg.analysis.report.drawing.Ink;
import datumpeg.analysis.report.drawing.Spot;
import java.util.ArrayList;
import java.util.List;

/** Draws into a plan what not every building has. One thread. */
final class PlanMarks {
  private static final double DOT = 3;

  private final PlanSheet plan;
  private final BuildingShape shape;
  private final PlanDetails details;
  private final Sheet sheet;

  PlanMarks(PlanSheet plan) {
    this.plan = plan;
    this.shape = plan.shape;
    this.details = plan.shape.details();
    this.sheet = plan.sheet;
  }

  /** The slab's outline: its own, as far as it is given, else the rectangle of span and length. */
  void outline() {
    double length = plan.lengthMetres();
    double span = plan.spanMetres();
    boolean own = !details.corners().isEmpty();
    sheet.box(
        own ? Ink.GRID : Ink.DESIGN,
        plan.x(0),
        plan.y(span),
        plan.x(length) - plan.x(0),
        plan.y(0) - plan.y(span));
    List<Spot> corners = details.corners().stream().map(corner -> spot(corner.place())).toList();
    if (corners.size() > 2) {
      sheet.outline(plan.isLitIn("slab.corners") ? Ink.FOUND : Ink.DESIGN, corners);
    } else if (corners.size() == 2) {
      sheet.line(Ink.DESIGN, corners.get(0), corners.get(1));
    }
  }

  void all() {
    details.outlets().forEach(this::outlet);
    details.corners().forEach(this::corner);
    details.posts().forEach(this::post);
    details.runs().forEach(this::run);
    anchors();
  }

  private void corner(PlanDetails.Corner corner) {
    boolean isLit = plan.isLitCorner(corner.name());
    Spot at = spot(corner.place());
    sheet.dot(isLit ? Ink.SOLID : Ink.PAPER, at, isLit ? 2 * DOT : DOT);
    if (!plan.isNamedByGrid(corner.name(), at)) {
      sheet.name(aroundCorner(corner, at, isLit));
    }
  }

  /** Inside the slab, further in where its edge is in the way, else outside. */
  private DrawnName aroundCorner(PlanDetails.Corner corner, Spot at, boolean isLit) {
    boolean high = corner.place().yMetres() > plan.spanMetres() / 2;
    boolean right = corner.place().xMetres() > plan.lengthMetres() / 2;
    Anchor inside = right ? Anchor.END : Anchor.START;
    Anchor outside = right ? Anchor.START : Anchor.END;
    double down = (high ? 0.7 : -0.7) * ShapeSheet.LINE;
    double across = (right ? -3 : 3) * DOT;
    DrawnName name =
        DrawnName.stepping(
            corner.name(),
            isLit,
            new DrawnName.Place(at.x() + across, at.y() + down, inside),
            6,
            0,
            down / 3);
    return name.or(
            DrawnName.stepping(
                corner.name(),
                isLit,
                new DrawnName.Place(at.x() - across, at.y() + down, outside),
                6,
                0,
                down / 3))
        .or(
            DrawnName.stepping(
                corner.name(),
                isLit,
                new DrawnName.Place(at.x(), at.y() - down, Anchor.MIDDLE),
                6,
                0,
                -down / 3));
  }

  private void post(PlanDetails.Post post) {
    String list = post.atFirstEnd() ? "mullions.end_1" : "mullions.end_n";
    double inward = shape.endLineOffsetMetres() + shape.columnWidthMetres() / 2;
    double x = plan.x(post.atFirstEnd() ? inward : plan.lengthMetres() - inward);
    double y = plan.y(post.fromSideAMetres());
    double half = plan.isLit(list) ? 5 : DOT;
    sheet.box(Ink.SOLID, x - half, y - half, 2 * half, 2 * half);
    double beside = (post.atFirstEnd() ? 1 : -1) * 3 * DOT;
    Anchor anchor = post.atFirstEnd() ? Anchor.START : Anchor.END;
    DrawnName.Place inside = new DrawnName.Place(x + beside, y, anchor);
    DrawnName.Place outside =
        new DrawnName.Place(x - beside, y, post.atFirstEnd() ? Anchor.END : Anchor.START);
    sheet.name(
        DrawnName.stepping(post.name(), plan.isLit(list), inside, 2, beside, 0)
            .orAside(0.3 * ShapeSheet.LINE, 3)
            .or(DrawnName.stepping(post.name(), plan.isLit(list), outside, 1, -beside, 0)));
  }

  /** The gutter along its side, a ring where it lets the water out. */
  private void outlet(PlanDetails.Outlet outlet) {
    boolean isLit = plan.isLitIn(outlet.onSideA() ? "gutters.A." : "gutters.B.");
    double y = plan.y(outlet.onSideA() ? 0 : plan.spanMetres()) + (outlet.onSideA() ? 4 : -4);
    Ink ink = isLit ? Ink.FOUND : Ink.DIAGONAL;
    Spot at = new Spot(plan.x(outlet.fromFirstEndMetres()), y);
    sheet.line(ink, new Spot(plan.x(0), y), new Spot(plan.x(plan.lengthMetres()), y));
    sheet.dot(Ink.PAPER, at, 1.7 * DOT);
    double inward = (outlet.onSideA() ? -1 : 1) * ShapeSheet.LINE;
    String name = plan.words.text("form.draw.outlet");
    DrawnName.Place inside = new DrawnName.Place(at.x(), at.y() + inward, Anchor.MIDDLE);
    sheet.name(DrawnName.stepping(name, isLit, inside, 3, 0, 0.3 * inward));
  }

  private void run(PlanDetails.Run run) {
    boolean isLit = plan.isLitIn("flatness.lines." + run.name() + "[");
    Spot from = spot(run.from());
    Spot to = spot(run.to());
    sheet.line(isLit ? Ink.FOUND : Ink.LIMIT, from, to);
    sheet.dot(Ink.SOLID, from, DOT);
    sheet.dot(Ink.SOLID, to, DOT);
    sheet.onLine(run.name(), new Spot((from.x() + to.x()) / 2, (from.y() + to.y()) / 2), isLit);
  }

  /** The anchors of each base, and the line that they must not cross. */
  private void anchors() {
    double edge = details.leastEdgeMetres().orElse(0.0);
    if (edge > 0) {
      boolean isLit = plan.isLit("anchors.edge_distance");
      double left = plan.x(edge);
      double top = plan.y(plan.spanMetres() - edge);
      double wide = plan.x(plan.lengthMetres() - edge) - left;
      sheet.box(isLit ? Ink.FOUND : Ink.UNCERTAINTY, left, top, wide, plan.y(edge) - top);
    }
    double across = details.anchorsAcrossMetres() / 2;
    double along = details.anchorsAlongMetres() / 2;
    if (edge > 0 || across > 0 || along > 0) {
      double column = shape.insetMetres() + shape.columnDepthMetres() / 2;
      for (double x : shape.framesMetres()) {
        places(x, column, along, across).forEach(place -> sheet.dot(Ink.SOLID, spot(place), 1.5));
        places(x, plan.spanMetres() - column, along, across)
            .forEach(place -> sheet.dot(Ink.SOLID, spot(place), 1.5));
      }
    }
  }

  private static List<PlanPoint> places(double x, double y, double along, double across) {
    List<PlanPoint> places = new ArrayList<>();
    for (double dx : along > 0 ? new double[] {-along, along} : new double[] {0}) {
      for (double dy : across > 0 ? new double[] {-across, across} : new double[] {0}) {
        places.add(new PlanPoint(x + dx, y + dy));
      }
    }
    return places;
  }

  private Spot spot(PlanPoint place) {
    return new Spot(plan.x(place.xMetres()), plan.y(place.yMetres()));
  }
}
