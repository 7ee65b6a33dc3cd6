package datumpeg.analysis.reduce;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** The three-bay job of {@link SimulatedSurvey} seen in a mirror, reading by reading. */
enum Mirror {
  /** A and B change places. */
  SIDES(Axis.ACROSS),
  /** The last frame becomes the first. */
  ENDS(Axis.ALONG);

  private static final Pattern NUMBER = Pattern.compile("(?<=^|[A-Z-])[1-4]");
  private static final Map<String, String> FACES = Map.of("low", "high", "high", "low");

  private final Axis turned;

  Mirror(Axis turned) {
    this.turned = turned;
  }

  /** Whether the plan has the mirror image of a point. */
  boolean has(PointName point) {
    return !Set.of("opening", "mullion", "anchor", "edge", "sheet", "profile", "gutter")
        .contains(point.feature());
  }

  /**
   * Seen in a mirror, a meter that leans reads the same on its other face, its zero error included;
   * an offset from a plumb line turns its sign.
   */
  Reading of(Reading reading) {
    Target target = reading.target();
    boolean turns = target.axis().filter(axis -> axis == turned).isPresent();
    boolean tilt = target.quantity() == MeasuredQuantity.TILT;
    double value = turns && !tilt ? -reading.valueSi() : reading.valueSi();
    int face = turns && tilt ? 3 - reading.face() : reading.face();
    return copy(reading, reading.id(), of(target), value, face);
  }

  private Target of(Target target) {
    List<PointName> points = target.points().stream().map(this::of).toList();
    return target.quantity() == MeasuredQuantity.DISTANCE
        ? Target.distance(points.get(0), points.get(1))
        : new Target(target.quantity(), points, target.axis(), target.question());
  }

  private PointName of(PointName point) {
    String part = this == ENDS ? FACES.getOrDefault(point.part(), point.part()) : point.part();
    return new PointName(
        point.feature(), point.placeInMetres().map(this::text).orElse(of(point.place())), part);
  }

  private String text(PlanPoint place) {
    double x = this == ENDS ? 18 - place.xMetres() : place.xMetres();
    double y = this == SIDES ? 9 - place.yMetres() : place.yMetres();
    return "@(" + plain(x) + ";" + plain(y) + ")";
  }

  private static String plain(double metres) {
    BigDecimal plain = BigDecimal.valueOf(metres).stripTrailingZeros();
    return plain.scale() < 0 ? plain.setScale(0).toPlainString() : plain.toPlainString();
  }

  /** Letters or numbers of a place or a result's target changed, whatever their order then is. */
  private String of(String place) {
    return this == SIDES
        ? place.replace('A', '?').replace('B', 'A').replace('?', 'B')
        : NUMBER
            .matcher(place)
            .replaceAll(found -> Integer.toString(5 - Integer.parseInt(found.group())));
  }

  /** Whether one result's target is the image of the other's; pairs stand in grid order. */
  boolean isImage(String target, String other) {
    if (target.contains("@")) {
      return PointName.parse(target).map(this::of).equals(PointName.parse(other));
    }
    return ends(of(target)).equals(ends(other));
  }

  /** The ends of {@code A1-A2/base} or {@code slab.A1-A4/best}, then what stands behind them. */
  private static List<String> ends(String target) {
    List<String> parts = List.of(target.split("/", 2));
    String[] ends = parts.get(0).replaceFirst("^slab[.]", "").split("-");
    Arrays.sort(ends);
    return List.of(String.join("-", ends), parts.size() > 1 ? parts.get(1) : "");
  }

  /** Whether a check's number turns its sign. */
  boolean turns(String check, String target) {
    Set<String> turning =
        this == SIDES
            ? Set.of("slab-diagonals", "portal-plumb")
            : Set.of("slab-diagonals", "line-parallel", "wall-square", "roof-square");
    return turning.contains(check)
        || (check.equals("column-plumb") && target.endsWith("/" + turned.text()));
  }

  static Reading copy(Reading reading, String id, Target target, double valueSi, int face) {
    return new Reading(
        id,
        reading.stage(),
        target,
        valueSi,
        face,
        reading.meter(),
        reading.session(),
        reading.setup(),
        reading.upMetres(),
        reading.round(),
        reading.at(),
        reading.operator(),
        reading.note());
  }
}
