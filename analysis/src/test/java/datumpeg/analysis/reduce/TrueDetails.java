package datumpeg.analysis.reduce;

import static datumpeg.analysis.reduce.TrueValues.change;
import static datumpeg.analysis.reduce.TrueValues.part;
import static datumpeg.analysis.reduce.TrueValues.point;

import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.simulate.SimulatedSite;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** What is true of posts, anchors, openings, roof, gutters, sheets and flatness. */
final class TrueDetails {
  /** Two places across in each third of the length. */
  private static final Set<String> STRAIGHTEDGE =
      Set.of("@(3;2.25)", "@(3;6.75)", "@(9;2.25)", "@(9;6.75)", "@(15;2.25)", "@(15;6.75)");

  private TrueDetails() {}

  /** {@code mullion.1.M1/across} or {@code opening.D1/left/along}. */
  static double postLean(SimulatedSite site, String target) {
    int slash = target.lastIndexOf('/');
    Axis axis = target.endsWith("/along") ? Axis.ALONG : Axis.ACROSS;
    return site.post(point(target.substring(0, slash))).leanMetres(axis);
  }

  /** {@code 1/A-M1}: across the building alone. */
  static double mullions(SimulatedSite site, String target) {
    String end = part(target, 0);
    double sum = 0;
    int sign = -1;
    for (String name : part(target, 1).split("-", -1)) {
      PointName point =
          point(name.startsWith("M") ? "mullion." + end + "." + name : "base." + name + end);
      sum += sign * (site.position(point).yMetres() - site.setOut().position(point).yMetres());
      sign = 1;
    }
    return sum;
  }

  /** {@code A2/mark}: against the plan; {@code A2}, {@code A1/end}: what is more than asked. */
  static double anchor(SimulatedSite site, String target) {
    String place = part(target, 0);
    PointName anchor = point("anchor." + place);
    if (target.endsWith("/mark")) {
      return change(site, anchor, point("line." + place));
    }
    boolean end = target.endsWith("/end");
    PointName edge = point("edge." + place + (end ? "/end" : ""));
    var anchors = site.setOut().details().anchors().orElseThrow();
    return site.distanceMetres(Target.distance(anchor, edge))
        - (end ? anchors.alongMetres() : anchors.acrossMetres()) / 2
        - anchors.edgeDistanceMetres();
  }

  static double opening(SimulatedSite site, String target) {
    String name = "opening." + part(target, 0);
    return switch (part(target, 1)) {
      case "foot", "head" ->
          change(
              site,
              point(name + "/left-" + part(target, 1)),
              point(name + "/right-" + part(target, 1)));
      case "diagonals" ->
          change(site, point(name + "/left-foot"), point(name + "/right-head"))
              - change(site, point(name + "/right-foot"), point(name + "/left-head"));
      default ->
          target.endsWith("/along") || target.endsWith("/across")
              ? postLean(site, "opening." + target)
              : change(
                  site, point("opening." + target + "-foot"), point("opening." + target + "-head"));
    };
  }

  static double eaves(SimulatedSite site) {
    var heights =
        site.setOut().portalFrameNumbers().stream()
            .flatMap(number -> Stream.of("A" + number, "B" + number))
            .mapToDouble(mark -> site.position(point("eave." + mark)).zMetres())
            .summaryStatistics();
    return heights.getMax() - heights.getMin();
  }

  /** {@code A1-A2}, from the eaves to the apexes of the other frame. */
  static double roof(SimulatedSite site, String bay) {
    List<String> frames = List.of(bay.split("-"));
    PointName low = point("eave." + frames.get(0));
    PointName high = point("eave." + frames.get(1));
    return change(site, low, point("apex." + frames.get(1).substring(1)))
        - change(site, high, point("apex." + frames.get(0).substring(1)));
  }

  /** Height above the outlet less 2 mm for each metre from it. */
  static double gutter(SimulatedSite site, String target) {
    Position here = site.position(point("gutter." + target));
    Position outlet = site.position(point("gutter.A@(18)"));
    double along = 18 - site.setOut().position(point("gutter." + target)).xMetres();
    return here.zMetres() - outlet.zMetres() - 0.002 * along;
  }

  /** {@code A/10/eave}; the skew is the ridge's run less the eave's. */
  static double sheets(SimulatedSite site, String target) {
    String side = part(target, 0);
    int laid = Integer.parseInt(part(target, 1));
    String pair = side + "1-" + side + (laid + 1);
    return part(target, 2).equals("skew")
        ? change(site, "sheet.", pair, "/ridge") - change(site, "sheet.", pair, "/eave")
        : change(site, "sheet.", pair, "/" + part(target, 2));
  }

  /** The greatest of the places a straightedge is laid at. */
  static double gap(SimulatedSite site) {
    return site.shifts().entrySet().stream()
        .filter(shift -> shift.getKey().feature().equals("slab"))
        .filter(shift -> STRAIGHTEDGE.contains(shift.getKey().place()))
        .mapToDouble(shift -> Math.abs(shift.getValue().zMetres()))
        .max()
        .orElseThrow();
  }
}
