package datumpeg.analysis.reduce;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.Outline;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.simulate.SimulatedSite;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What each check would have found with perfect meters in perfect hands, computed from the site
 * itself by another way than the reduction's. To add a check, add its line to {@link #KNOWN}.
 */
final class TrueValues {
  /** What a check's number is, and so how it is judged. */
  enum Kind {
    /** Its interval shall hold the truth. */
    SIGNED,
    /** Printed without its sign, decided with it. */
    ABSOLUTE,
    /** Largest less smallest: never negative, and read too large by errors alone. */
    SPREAD
  }

  /** The true deviation of a target, in metres, with its sign where it has one. */
  @FunctionalInterface
  interface Truth {
    double metres(SimulatedSite site, String target);
  }

  /**
   * How much longer than at 20 °C the steel under an outcome is on the day: 12 µm a metre and
   * kelvin (EN 1993-1-1 3.2.6, from memory).
   */
  static double warmthMetres(Outcome outcome, SimulatedSurvey survey) {
    SetOut setOut = survey.site().setOut();
    String target = outcome.target();
    double steel =
        switch (outcome.check()) {
          case "rafter-pair" -> outcome.measured();
          case "clear-span" -> target.endsWith("/eave") ? setOut.clearSpanMetres() : 0;
          case "frame-spacing" -> target.endsWith("/base") ? 0 : outcome.nominal().orElseThrow();
          case "spacing-match" -> {
            int from = Character.digit(target.charAt(1), 10);
            yield setOut.portalFrameXMetres(from + 1) - setOut.portalFrameXMetres(from);
          }
          case "sheet-run" -> target.endsWith("/skew") ? 0 : outcome.nominal().orElseThrow();
          default -> 0;
        };
    return 12e-6 * (survey.steelCelsius() - 20) * steel;
  }

  /** How a check is judged and what is true. */
  record Known(Kind kind, Truth truth) {}

  private static final Map<String, Known> KNOWN =
      Map.ofEntries(
          signed("slab-size", (site, target) -> change(site, "slab.", target, "")),
          Map.entry("slab-diagonals", new Known(Kind.ABSOLUTE, TrueValues::diagonals)),
          signed("slab-square", TrueValues::square),
          Map.entry("slab-level", new Known(Kind.SPREAD, (site, target) -> spread(site, "slab"))),
          Map.entry("seat-level", new Known(Kind.SPREAD, (site, target) -> spread(site, "seat"))),
          signed("slab-level-point", TrueValues::level),
          signed("line-parallel", TrueValues::parallel),
          signed("line-straight", TrueValues::offset),
          signed("base-straight", (site, target) -> offset(site, "base." + target)),
          Map.entry("straightness", new Known(Kind.SPREAD, TrueValues::straightness)),
          signed("rafter-pair", (site, number) -> across(site, "tip", number)),
          signed("clear-span", (site, target) -> across(site, part(target, 1), part(target, 0))),
          signed("wall-square", TrueValues::rack),
          signed("foot-line", (site, target) -> offset(site, "base." + target)),
          signed("frame-spacing", TrueValues::spacing),
          signed(
              "spacing-match",
              (site, target) -> spacing(site, target + "/eave") - spacing(site, target + "/base")),
          signed("overall-length", TrueValues::overall),
          signed("column-plumb", TrueValues::lean),
          signed("portal-plumb", TrueValues::meanLean),
          signed("mullion-plumb", (site, target) -> postLean(site, "mullion." + target)),
          signed("mullion-spacing", TrueValues::mullions),
          signed("anchor-edge", TrueValues::anchor),
          signed("opening", TrueValues::opening),
          Map.entry("eave-level", new Known(Kind.SPREAD, (site, target) -> eaves(site))),
          signed("roof-square", TrueValues::roof),
          signed("gutter-fall", TrueValues::gutter),
          signed("sheet-run", TrueValues::sheets),
          Map.entry("slab-flatness", new Known(Kind.SPREAD, (site, target) -> gap(site))));

  /** Two places across in each third of the length. */
  private static final Set<String> STRAIGHTEDGE =
      Set.of("@(3;2.25)", "@(3;6.75)", "@(9;2.25)", "@(9;6.75)", "@(15;2.25)", "@(15;6.75)");

  private TrueValues() {}

  /** What is known of a check; empty if nobody has said what is true of it. */
  static Optional<Known> of(String check) {
    return Optional.ofNullable(KNOWN.get(check));
  }

  private static Map.Entry<String, Known> signed(String check, Truth truth) {
    return Map.entry(check, new Known(Kind.SIGNED, truth));
  }

  private static String part(String target, int index) {
    return List.of(target.split("/")).get(index);
  }

  private static PointName point(String text) {
    return PointName.parse(text).orElseThrow();
  }

  /** True − design distance of {@code A1-A4} between points of a feature. */
  private static double change(SimulatedSite site, String feature, String pair, String face) {
    List<String> ends = List.of(pair.split("-"));
    return change(site, point(feature + ends.get(0) + face), point(feature + ends.get(1) + face));
  }

  private static double change(SimulatedSite site, PointName one, PointName other) {
    return site.distanceMetres(Target.distance(one, other))
        - site.setOut().nominalDistanceMetres(one, other);
  }

  private static double across(SimulatedSite site, String feature, String number) {
    return change(site, point(feature + ".A" + number), point(feature + ".B" + number));
  }

  private static double diagonals(SimulatedSite site, String slab) {
    List<String> corners = site.setOut().slab().cornerNames();
    return change(site, slab + ".", corners.get(0) + "-" + corners.get(2), "")
        - change(site, slab + ".", corners.get(1) + "-" + corners.get(3), "");
  }

  /** Shorter side × tan of the angle too much, the angle from cross and dot product. */
  private static double square(SimulatedSite site, String corner) {
    Outline outline = new Outline(site.setOut().slab());
    PlanPoint at = place(site, corner);
    PlanPoint one = place(site, outline.nextAnticlockwise(corner));
    PlanPoint other = place(site, outline.previousAnticlockwise(corner));
    double oneX = one.xMetres() - at.xMetres();
    double oneY = one.yMetres() - at.yMetres();
    double otherX = other.xMetres() - at.xMetres();
    double otherY = other.yMetres() - at.yMetres();
    double angle = StrictMath.atan2(oneX * otherY - oneY * otherX, oneX * otherX + oneY * otherY);
    return outline.shorterSideMetres(corner)
        * StrictMath.tan(angle - outline.interiorAngleRadians(corner));
  }

  private static PlanPoint place(SimulatedSite site, String corner) {
    return site.position(point("slab." + corner)).plan();
  }

  private static List<PointName> levelPoints(SimulatedSite site, String feature) {
    return site.setOut().slab().levelPoints().stream()
        .filter(point -> point.feature().equals(feature))
        .toList();
  }

  private static double spread(SimulatedSite site, String feature) {
    var heights =
        levelPoints(site, feature).stream()
            .mapToDouble(point -> site.position(point).zMetres())
            .summaryStatistics();
    return heights.getMax() - heights.getMin();
  }

  private static double level(SimulatedSite site, String name) {
    double mean =
        levelPoints(site, "slab").stream()
            .mapToDouble(point -> site.position(point).zMetres())
            .average()
            .orElseThrow();
    return site.position(point(name)).zMetres() - mean;
  }

  private static double parallel(SimulatedSite site, String lines) {
    int last = site.setOut().building().portalFrameCount();
    return across(site, "line", Integer.toString(last)) - across(site, "line", "1");
  }

  private static double offset(SimulatedSite site, String name) {
    return site.offsetMetres(Target.at(MeasuredQuantity.OFFSET, point(name)));
  }

  /**
   * {@code line.A/chord}, {@code edge.B/best}, {@code slab.A1-A4/chord}: greatest distance from the
   * line through the true ends, or from the line of total least squares, whose direction is that of
   * the greater spread (the turned axes of the second moments).
   */
  private static double straightness(SimulatedSite site, String target) {
    List<PlanPoint> row = row(site, part(target, 0));
    if (part(target, 1).equals("chord")) {
      PlanPoint start = row.get(0);
      PlanPoint end = row.get(row.size() - 1);
      return greatest(
          row,
          start,
          StrictMath.atan2(end.yMetres() - start.yMetres(), end.xMetres() - start.xMetres()));
    }
    double x = row.stream().mapToDouble(PlanPoint::xMetres).average().orElseThrow();
    double y = row.stream().mapToDouble(PlanPoint::yMetres).average().orElseThrow();
    double xx = row.stream().mapToDouble(p -> (p.xMetres() - x) * (p.xMetres() - x)).sum();
    double yy = row.stream().mapToDouble(p -> (p.yMetres() - y) * (p.yMetres() - y)).sum();
    double xy = row.stream().mapToDouble(p -> (p.xMetres() - x) * (p.yMetres() - y)).sum();
    return greatest(row, new PlanPoint(x, y), StrictMath.atan2(2 * xy, xx - yy) / 2);
  }

  private static double greatest(List<PlanPoint> row, PlanPoint through, double direction) {
    return row.stream()
        .mapToDouble(
            p ->
                Math.abs(
                    (p.yMetres() - through.yMetres()) * StrictMath.cos(direction)
                        - (p.xMetres() - through.xMetres()) * StrictMath.sin(direction)))
        .max()
        .orElseThrow();
  }

  /** Where the points of a row truly are, from end to end. */
  private static List<PlanPoint> row(SimulatedSite site, String name) {
    SetOut setOut = site.setOut();
    String feature = name.substring(0, name.indexOf('.'));
    String side = name.substring(name.indexOf('.') + 1);
    Stream<PointName> points =
        switch (feature) {
          case "edge" ->
              Stream.concat(
                  Stream.of(point("edge." + side + "@(0)"), point("edge." + side + "@(18)")),
                  site.shifts().keySet().stream()
                      .filter(p -> p.feature().equals("edge") && p.place().startsWith(side + "@")));
          case "slab" ->
              site.shifts().keySet().stream()
                  .filter(p -> p.feature().equals("slab"))
                  .filter(p -> isMeasured(setOut, p))
                  .filter(p -> isOnSide(setOut, p, List.of(side.split("-"))));
          default -> setOut.portalFrameNumbers().stream().map(n -> point(feature + "." + side + n));
        };
    return points
        .distinct()
        .sorted(Comparator.comparingDouble(p -> setOut.position(p).xMetres()))
        .map(p -> site.position(p).plan())
        .toList();
  }

  /** Corners, and places levelled: those are measured to along the sides. */
  private static boolean isMeasured(SetOut setOut, PointName point) {
    return point.gridMark().isPresent() || setOut.slab().levelPoints().contains(point);
  }

  private static boolean isOnSide(SetOut setOut, PointName point, List<String> ends) {
    return new Outline(setOut.slab())
        .isOnSide(setOut.position(point).plan(), ends.get(0), ends.get(1));
  }

  /** Mean shift of a lying wall frame's eave corners along its foot line, by vectors. */
  private static double rack(SimulatedSite site, String side) {
    String last = side + site.setOut().building().portalFrameCount();
    Position foot1 = site.position(point("wall." + side + "1/foot"));
    Position footN = site.position(point("wall." + last + "/foot"));
    double x = footN.xMetres() - foot1.xMetres();
    double z = footN.zMetres() - foot1.zMetres();
    double sum = 0;
    for (String end : List.of(side + "1", last)) {
      Position foot = site.position(point("wall." + end + "/foot"));
      Position eave = site.position(point("wall." + end + "/eave"));
      sum += (eave.xMetres() - foot.xMetres()) * x + (eave.zMetres() - foot.zMetres()) * z;
    }
    return sum / 2 / Math.sqrt(x * x + z * z);
  }

  /**
   * {@code A1-A2/base}, {@code A1-A2/eave} or {@code 1-2/apex}: true − design along the building.
   */
  private static double spacing(SimulatedSite site, String target) {
    List<String> ends = List.of(part(target, 0).split("-"));
    SetOut setOut = site.setOut();
    PointName one = point(part(target, 1) + "." + ends.get(0));
    PointName other = point(part(target, 1) + "." + ends.get(1));
    return along(site.position(one), site.position(other))
        - along(setOut.position(one), setOut.position(other));
  }

  private static double along(Position one, Position other) {
    return other.xMetres() - one.xMetres();
  }

  private static double overall(SimulatedSite site, String side) {
    int last = site.setOut().building().portalFrameCount();
    return change(site, point("base." + side + "1/low"), point("base." + side + last + "/high"));
  }

  private static double lean(SimulatedSite site, String target) {
    GridMark mark = GridMark.parse(part(target, 0)).orElseThrow();
    return site.column(mark).leanMetres(part(target, 1).equals("along") ? Axis.ALONG : Axis.ACROSS);
  }

  /** {@code mullion.1.M1/across} or {@code opening.D1/left/along}. */
  private static double postLean(SimulatedSite site, String target) {
    int slash = target.lastIndexOf('/');
    Axis axis = target.endsWith("/along") ? Axis.ALONG : Axis.ACROSS;
    return site.post(point(target.substring(0, slash))).leanMetres(axis);
  }

  /** {@code 1/A-M1}: across the building alone. */
  private static double mullions(SimulatedSite site, String target) {
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
  private static double anchor(SimulatedSite site, String target) {
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

  private static double opening(SimulatedSite site, String target) {
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

  private static double eaves(SimulatedSite site) {
    var heights =
        site.setOut().portalFrameNumbers().stream()
            .flatMap(number -> Stream.of("A" + number, "B" + number))
            .mapToDouble(mark -> site.position(point("eave." + mark)).zMetres())
            .summaryStatistics();
    return heights.getMax() - heights.getMin();
  }

  /** {@code A1-A2}, from the eaves to the apexes of the other frame. */
  private static double roof(SimulatedSite site, String bay) {
    List<String> frames = List.of(bay.split("-"));
    PointName low = point("eave." + frames.get(0));
    PointName high = point("eave." + frames.get(1));
    return change(site, low, point("apex." + frames.get(1).substring(1)))
        - change(site, high, point("apex." + frames.get(0).substring(1)));
  }

  /** Height above the outlet less 2 mm for each metre from it. */
  private static double gutter(SimulatedSite site, String target) {
    Position here = site.position(point("gutter." + target));
    Position outlet = site.position(point("gutter.A@(18)"));
    double along = 18 - site.setOut().position(point("gutter." + target)).xMetres();
    return here.zMetres() - outlet.zMetres() - 0.002 * along;
  }

  /** {@code A/10/eave}; the skew is the ridge's run less the eave's. */
  private static double sheets(SimulatedSite site, String target) {
    String side = part(target, 0);
    int laid = Integer.parseInt(part(target, 1));
    String pair = side + "1-" + side + (laid + 1);
    return part(target, 2).equals("skew")
        ? change(site, "sheet.", pair, "/ridge") - change(site, "sheet.", pair, "/eave")
        : change(site, "sheet.", pair, "/" + part(target, 2));
  }

  /** The greatest of the places a straightedge is laid at. */
  private static double gap(SimulatedSite site) {
    return site.shifts().entrySet().stream()
        .filter(shift -> shift.getKey().feature().equals("slab"))
        .filter(shift -> STRAIGHTEDGE.contains(shift.getKey().place()))
        .mapToDouble(shift -> Math.abs(shift.getValue().zMetres()))
        .max()
        .orElseThrow();
  }

  private static double meanLean(SimulatedSite site, String target) {
    return (lean(site, "A" + target) + lean(site, "B" + target)) / 2;
  }
}
