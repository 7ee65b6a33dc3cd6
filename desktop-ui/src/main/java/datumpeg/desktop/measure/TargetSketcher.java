package datumpeg.desktop.measure;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.UnknownPointException;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.desktop.measure.TargetSketch.Dot;
import datumpeg.desktop.measure.TargetSketch.Line;
import datumpeg.desktop.measure.TargetSketch.Name;
import datumpeg.desktop.measure.TargetSketch.Role;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Sketches where a target lies: on the plan of the slab, in a wall frame seen from outside side A,
 * or in a portal frame seen from outside end 1. One thread.
 */
final class TargetSketcher {
  private static final Set<String> ON_THE_SLAB =
      Set.of("slab", "seat", "line", "base", "anchor", "edge", "profile");
  private static final double LEAST_METRES = 0.05;

  private final SetOut setOut;
  private final Words words;
  private final List<Line> lines = new ArrayList<>();
  private final List<Dot> dots = new ArrayList<>();
  private final List<Name> names = new ArrayList<>();

  TargetSketcher(SetOut setOut, Words words) {
    this.setOut = setOut;
    this.words = words;
  }

  /** Which way one looks at the building. */
  private enum View {
    PLAN,
    WALL,
    PORTAL
  }

  /**
   * The sketch of a target.
   *
   * @param open what else is still to be measured
   */
  TargetSketch sketch(Target target, List<Target> open) {
    View view = view(target);
    int portal = portalOf(target);
    switch (view) {
      case PLAN -> plan();
      case WALL -> wall();
      case PORTAL -> portal(portal);
    }
    open.stream()
        .filter(other -> !other.equals(target) && view(other) == view)
        .filter(other -> view != View.PORTAL || portalOf(other) == portal)
        .forEach(other -> mark(other, view, Role.OPEN));
    mark(target, view, Role.LIT);
    String title = title(view, target, portal);
    return new TargetSketch(
        title, lines, dots, names, words.text("measure.spoken", title, TargetWords.of(target)));
  }

  private String title(View view, Target target, int portal) {
    return switch (view) {
      case PLAN -> words.text("measure.view.plan");
      case WALL ->
          words.text("measure.view.wall", target.points().get(0).place().replaceAll("\\d.*", ""));
      case PORTAL -> words.text("measure.view.portal", portal);
    };
  }

  private View view(Target target) {
    if (target.axis().isPresent()) {
      return target.axis().get() == Axis.ALONG ? View.WALL : View.PORTAL;
    }
    if (target.points().stream().allMatch(point -> ON_THE_SLAB.contains(point.feature()))) {
      return View.PLAN;
    }
    List<Position> places = places(target);
    if (places.size() < 2) {
      return View.WALL;
    }
    boolean along = Math.abs(places.get(0).xMetres() - places.get(1).xMetres()) > LEAST_METRES;
    boolean across = Math.abs(places.get(0).yMetres() - places.get(1).yMetres()) > LEAST_METRES;
    return along && across ? View.PLAN : along ? View.WALL : View.PORTAL;
  }

  /** The frame that a portal view shows. */
  private int portalOf(Target target) {
    Optional<PointName> first = target.points().stream().findFirst();
    Optional<Integer> number =
        first
            .flatMap(PointName::frameNumber)
            .or(() -> first.flatMap(PointName::gridMark).map(GridMark::number))
            .or(() -> first.filter(point -> point.place().matches("\\d+\\..*")).map(this::end));
    return Math.min(number.orElse(1), setOut.building().portalFrameCount());
  }

  private int end(PointName point) {
    return Integer.parseInt(point.place().replaceAll("\\D.*", ""));
  }

  private List<Position> places(Target target) {
    List<Position> places = new ArrayList<>();
    for (PointName point : target.points()) {
      try {
        places.add(setOut.position(point));
      } catch (UnknownPointException unknown) {
        return List.of(); // the plan has no place for it; the words name it all the same
      }
    }
    return places;
  }

  /** From outside end 1 side A is on the right hand: y runs from there to the left. */
  private double x(View view, Position place) {
    return view == View.PORTAL ? setOut.building().spanMetres() - place.yMetres() : place.xMetres();
  }

  private static double y(View view, Position place) {
    return view == View.PLAN ? place.yMetres() : place.zMetres();
  }

  private void mark(Target target, View view, Role role) {
    List<Position> places = places(target);
    if (target.quantity() == MeasuredQuantity.TILT && !places.isEmpty()) {
      column(role, x(view, places.get(0)), setOut.building().columnHeightMetres());
      return;
    }
    if (places.size() == 2) {
      line(
          role,
          x(view, places.get(0)),
          y(view, places.get(0)),
          x(view, places.get(1)),
          y(view, places.get(1)));
    }
    places.forEach(place -> dots.add(new Dot(role, x(view, place), y(view, place))));
  }

  private void column(Role role, double x, double height) {
    line(role, x, 0, x, height);
    dots.add(new Dot(role, x, height / 2));
  }

  private void line(Role role, double fromX, double fromY, double toX, double toY) {
    lines.add(new Line(role, fromX, fromY, toX, toY));
  }

  private void plan() {
    List<PlanPoint> corners = List.copyOf(setOut.slab().corners().values());
    for (int i = 0; i < corners.size(); i++) {
      PlanPoint from = corners.get(i);
      PlanPoint to = corners.get((i + 1) % corners.size());
      line(Role.BUILDING, from.xMetres(), from.yMetres(), to.xMetres(), to.yMetres());
    }
    for (int number : setOut.portalFrameNumbers()) {
      for (char letter : new char[] {'A', 'B'}) {
        GridMark mark = new GridMark(letter, number);
        Position base = setOut.position(PointName.at("base", mark));
        dots.add(new Dot(Role.BUILDING, base.xMetres(), base.yMetres()));
        double edge = letter == 'A' ? 0 : setOut.building().spanMetres();
        names.add(new Name(mark.text(), base.xMetres(), edge, 0, letter == 'A' ? -1 : 1));
      }
    }
    names.add(new Name(words.text("measure.end-1"), 0, setOut.building().spanMetres() / 2, -1, 0));
  }

  private void wall() {
    double eave = setOut.building().eaveHeightMetres();
    double first = setOut.portalFrameXMetres(1);
    double last = setOut.portalFrameXMetres(setOut.building().portalFrameCount());
    line(Role.BUILDING, 0, 0, setOut.building().lengthMetres(), 0);
    line(Role.BUILDING, first, eave, last, eave);
    for (int number : setOut.portalFrameNumbers()) {
      double x = setOut.portalFrameXMetres(number);
      line(Role.BUILDING, x, 0, x, eave);
      names.add(new Name(Integer.toString(number), x, 0, 0, -1));
    }
  }

  private void portal(int number) {
    double eave = setOut.building().eaveHeightMetres();
    double span = setOut.building().spanMetres();
    double in = setOut.columnLineOffsetMetres();
    line(Role.BUILDING, 0, 0, span, 0);
    line(Role.BUILDING, in, 0, in, eave);
    line(Role.BUILDING, span - in, 0, span - in, eave);
    double ridge = setOut.roofHeightMetres(span / 2);
    line(Role.BUILDING, in, eave, span / 2, ridge);
    line(Role.BUILDING, span / 2, ridge, span - in, eave);
    names.add(new Name("A" + number, span - in, 0, 0, -1));
    names.add(new Name("B" + number, in, 0, 0, -1));
  }
}
