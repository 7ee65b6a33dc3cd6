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
import java.util.List;
import java.util.Map;
import java.util.Optional;

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
          Map.entry("straightness", new Known(Kind.SPREAD, TrueRows::straightness)),
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
          signed(
              "mullion-plumb", (site, target) -> TrueDetails.postLean(site, "mullion." + target)),
          signed("mullion-spacing", TrueDetails::mullions),
          signed("anchor-edge", TrueDetails::anchor),
          signed("opening", TrueDetails::opening),
          Map.entry(
              "eave-level", new Known(Kind.SPREAD, (site, target) -> TrueDetails.eaves(site))),
          signed("roof-square", TrueDetails::roof),
          signed("gutter-fall", TrueDetails::gutter),
          signed("sheet-run", TrueDetails::sheets),
          Map.entry(
              "slab-flatness", new Known(Kind.SPREAD, (site, target) -> TrueDetails.gap(site))));

  private TrueValues() {}

  /** What is known of a check; empty if nobody has said what is true of it. */
  static Optional<Known> of(String check) {
    return Optional.ofNullable(KNOWN.get(check));
  }

  private static Map.Entry<String, Known> signed(String check, Truth truth) {
    return Map.entry(check, new Known(Kind.SIGNED, truth));
  }

  static String part(String target, int index) {
    return List.of(target.split("/")).get(index);
  }

  static PointName point(String text) {
    return PointName.parse(text).orElseThrow();
  }

  /** True − design distance of {@code A1-A4} between points of a feature. */
  static double change(SimulatedSite site, String feature, String pair, String face) {
    List<String> ends = List.of(pair.split("-"));
    return change(site, point(feature + ends.get(0) + face), point(feature + ends.get(1) + face));
  }

  static double change(SimulatedSite site, PointName one, PointName other) {
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

  private static double meanLean(SimulatedSite site, String target) {
    return (lean(site, "A" + target) + lean(site, "B" + target)) / 2;
  }
}
