package datumpeg.analysis.measuring;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.Opening;
import datumpeg.analysis.building.Outline;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Roof;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.detail.FlatnessPlan;
import datumpeg.analysis.detail.Gutter;
import datumpeg.analysis.detail.Mullion;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Which targets the checks of details need; none where the plan does not give the detail. */
final class DetailTargets {
  /** The run of the sheets is taken after so many (common practice, no source). */
  static final int SHEETS_BETWEEN_CHECKS = 10;

  private static final List<Character> SIDES = List.of('A', 'B');

  private final SetOut setOut;
  private final int n;

  DetailTargets(SetOut setOut) {
    this.setOut = setOut;
    this.n = setOut.building().portalFrameCount();
  }

  /** Each base's anchors: centre to line mark, then to each edge they are near. */
  List<Target> anchors() {
    List<Target> targets = new ArrayList<>();
    if (setOut.details().anchors().isEmpty()) {
      return targets;
    }
    for (char side : SIDES) {
      for (int number : setOut.portalFrameNumbers()) {
        String place = new GridMark(side, number).text();
        PointName anchor = new PointName("anchor", place, "");
        targets.add(Target.distance(anchor, new PointName("line", place, "")));
        targets.add(Target.distance(anchor, new PointName("edge", place, "")));
        if (number == 1 || number == n) {
          targets.add(Target.distance(anchor, new PointName("edge", place, "end")));
        }
      }
    }
    return targets;
  }

  List<Target> mullionTilts() {
    List<Target> targets = new ArrayList<>();
    for (Mullion mullion : setOut.details().mullions()) {
      for (Axis axis : Axis.values()) {
        targets.add(Target.along(MeasuredQuantity.TILT, point(mullion), axis));
      }
    }
    return targets;
  }

  /** From column A across to column B of each end that has mullions. */
  List<Target> mullionSpacing() {
    List<Target> targets = new ArrayList<>();
    for (int end : List.of(1, n)) {
      List<PointName> row = new ArrayList<>();
      setOut.details().mullions().stream()
          .filter(mullion -> mullion.portalFrame() == end)
          .forEach(mullion -> row.add(point(mullion)));
      if (!row.isEmpty()) {
        row.add(0, PointName.at("base", new GridMark('A', end)));
        row.add(PointName.at("base", new GridMark('B', end)));
      }
      for (int i = 1; i < row.size(); i++) {
        targets.add(Target.distance(row.get(i - 1), row.get(i)));
      }
    }
    return targets;
  }

  private static PointName point(Mullion mullion) {
    return new PointName("mullion", mullion.place(), "");
  }

  /** Each opening's sides and diagonals, then its two posts both ways. */
  List<Target> openings() {
    List<Target> targets = new ArrayList<>();
    for (Opening opening : setOut.openings()) {
      List<PointName> corners =
          List.of("left-foot", "right-foot", "right-head", "left-head").stream()
              .map(part -> new PointName("opening", opening.id(), part))
              .toList();
      targets.addAll(CheckTargets.allPairs(corners));
      for (String post : List.of("left", "right")) {
        for (Axis axis : Axis.values()) {
          PointName point = new PointName("opening", opening.id(), post);
          targets.add(Target.along(MeasuredQuantity.TILT, point, axis));
        }
      }
    }
    return targets;
  }

  /** Both diagonals of each roof bay, side by side. */
  List<Target> roofDiagonals() {
    List<Target> targets = new ArrayList<>();
    boolean gable = setOut.building().roof() == Roof.GABLE;
    for (char side : gable ? SIDES : List.of('A')) {
      for (int number = 1; number < n; number++) {
        PointName low = PointName.at("eave", new GridMark(side, number));
        PointName high = PointName.at("eave", new GridMark(side, number + 1));
        targets.add(Target.distance(low, opposite(gable, number + 1)));
        targets.add(Target.distance(high, opposite(gable, number)));
      }
    }
    return targets;
  }

  private static PointName opposite(boolean gable, int number) {
    return gable
        ? new PointName("apex", Integer.toString(number), "")
        : PointName.at("eave", new GridMark('B', number));
  }

  /** The slab's side edges beside the inner frames, where the slab has an edge there. */
  List<Target> edges() {
    Outline outline = new Outline(setOut.slab());
    List<Target> targets = new ArrayList<>();
    for (char side : SIDES) {
      for (int number = 2; number < n; number++) {
        PointName place = new PointName("edge", side + at(setOut.portalFrameXMetres(number)), "");
        if (outline.isOn(setOut.position(place).plan())) {
          targets.add(Target.at(MeasuredQuantity.OFFSET, place));
        }
      }
    }
    return targets;
  }

  /** Ends, outlet, and where an inner frame carries the gutter. */
  List<Target> gutters() {
    List<Target> targets = new ArrayList<>();
    setOut
        .details()
        .gutters()
        .forEach(
            (side, gutter) ->
                gutterPlaces(gutter)
                    .forEach(
                        x ->
                            targets.add(
                                Target.at(
                                    MeasuredQuantity.HEIGHT,
                                    new PointName("gutter", side + at(x), "")))));
    return targets;
  }

  private Set<Double> gutterPlaces(Gutter gutter) {
    TreeSet<Double> places = new TreeSet<>();
    places.add(0.0);
    places.add(setOut.building().lengthMetres());
    places.add(gutter.outletMetres());
    for (int number = 2; number < n; number++) {
      places.add(setOut.portalFrameXMetres(number));
    }
    return places;
  }

  /** The covered length at eave and ridge after every ten sheets. */
  List<Target> sheets() {
    List<Target> targets = new ArrayList<>();
    if (setOut.building().sections().sheetCoverMetres().isEmpty()) {
      return targets;
    }
    double cover = setOut.building().sections().sheetCoverMetres().getAsDouble();
    int whole = (int) Math.floor(setOut.building().lengthMetres() / cover + 1e-9);
    for (char side : SIDES) {
      for (int laid = SHEETS_BETWEEN_CHECKS; laid <= whole; laid += SHEETS_BETWEEN_CHECKS) {
        for (String part : List.of("eave", "ridge")) {
          targets.add(Target.distance(sheet(side, 1, part), sheet(side, laid + 1, part)));
        }
      }
    }
    return targets;
  }

  private static PointName sheet(char side, int number, String part) {
    return new PointName("sheet", new GridMark(side, number).text(), part);
  }

  /** The points of each profile, then the places of the straightedge. */
  List<Target> flatness() {
    List<Target> targets = new ArrayList<>();
    setOut
        .details()
        .flatness()
        .ifPresent(
            plan -> {
              plan.lines()
                  .forEach(
                      (name, line) ->
                          plan.stationsMetres(line)
                              .forEach(
                                  along ->
                                      targets.add(
                                          Target.at(
                                              MeasuredQuantity.HEIGHT,
                                              new PointName("profile", name + at(along), "")))));
              targets.addAll(straightedge(plan));
            });
    return targets;
  }

  /** A grid of places, evenly spaced and at most the nominal spacing apart. */
  private List<Target> straightedge(FlatnessPlan plan) {
    List<Target> targets = new ArrayList<>();
    if (plan.spacingMetres().isEmpty()) {
      return targets;
    }
    double spacing = plan.spacingMetres().getAsDouble();
    for (double x : middles(setOut.building().lengthMetres(), spacing)) {
      for (double y : middles(setOut.building().spanMetres(), spacing)) {
        if (setOut.slab().covers(new PlanPoint(x, y))) {
          targets.add(
              Target.at(
                  MeasuredQuantity.OFFSET,
                  new PointName("slab", "@(" + metres(x) + ";" + metres(y) + ")", "")));
        }
      }
    }
    return targets;
  }

  private static List<Double> middles(double lengthMetres, double spacingMetres) {
    int count = Math.max(1, (int) Math.ceil(lengthMetres / spacingMetres - 1e-9));
    List<Double> middles = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      middles.add(lengthMetres * (i + 0.5) / count);
    }
    return middles;
  }

  private static String at(double metres) {
    return "@(" + metres(metres) + ")";
  }

  /** Metres to a tenth of a millimetre, without needless zeros. */
  private static String metres(double metres) {
    BigDecimal rounded =
        BigDecimal.valueOf(metres).setScale(4, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.setScale(0).toPlainString() : rounded.toPlainString();
  }
}
