package datumpeg.analysis.measuring;

import datumpeg.analysis.building.Face;
import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Roof;
import datumpeg.analysis.building.SetOut;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Which targets a check needs. One method a check. */
final class CheckTargets {
  private final SetOut setOut;
  private final int n;

  CheckTargets(SetOut setOut) {
    this.setOut = setOut;
    this.n = setOut.building().portalFrameCount();
  }

  List<Target> of(String check) {
    return switch (check) {
      case "slab-size", "slab-diagonals", "slab-square" -> allPairs(slabCorners());
      case "slab-level", "slab-level-point" -> heights(slabLevelPoints());
      case "seat-level" -> heights(levelPoints("seat"));
      case "line-parallel" -> lineParallel();
      case "line-straight" -> offsets("line", 2, n - 1);
      case "rafter-pair" -> rafterPairs();
      case "wall-square" -> wallSquare();
      case "foot-line" -> offsets("base", 1, n);
      case "base-straight" -> offsets("base", 2, n - 1);
      case "column-plumb", "portal-plumb" -> columnPlumb();
      case "frame-spacing", "frame-spacing/base" -> spacing("base");
      case "frame-spacing/eave" -> spacing("eave");
      case "frame-spacing/apex" -> apexSpacing();
      case "spacing-match" -> both(spacing("base"), spacing("eave"));
      case "clear-span", "clear-span/base" -> clearSpan("base");
      case "clear-span/eave" -> clearSpan("eave");
      case "overall-length" -> overallLength();
      default -> ofDetail(check);
    };
  }

  private List<Target> ofDetail(String check) {
    DetailTargets details = new DetailTargets(setOut);
    return switch (check) {
      case "straightness" -> details.edges();
      case "slab-flatness" -> details.flatness();
      case "anchor-edge" -> details.anchors();
      case "mullion-plumb" -> details.mullionTilts();
      case "mullion-spacing" -> details.mullionSpacing();
      case "opening" -> details.openings();
      case "eave-level" ->
          walk(1, n).stream()
              .map(mark -> Target.at(MeasuredQuantity.HEIGHT, PointName.at("eave", mark)))
              .toList();
      case "roof-square" -> details.roofDiagonals();
      case "gutter-fall" -> details.gutters();
      case "sheet-run" -> details.sheets();
      default -> List.of();
    };
  }

  private List<PointName> slabCorners() {
    return setOut.slab().cornerNames().stream()
        .map(name -> new PointName("slab", name, ""))
        .toList();
  }

  /** The slab's points as the job names them, else its corners. */
  private List<PointName> slabLevelPoints() {
    List<PointName> named = levelPoints("slab");
    return named.isEmpty() && setOut.slab().levelPoints().isEmpty() ? slabCorners() : named;
  }

  private List<PointName> levelPoints(String feature) {
    return setOut.slab().levelPoints().stream()
        .filter(point -> point.feature().equals(feature))
        .toList();
  }

  private static List<Target> heights(List<PointName> points) {
    return points.stream().map(point -> Target.at(MeasuredQuantity.HEIGHT, point)).toList();
  }

  /** Every side and diagonal: from each point to all that come later. */
  static List<Target> allPairs(List<PointName> points) {
    List<Target> targets = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      for (PointName other : points.subList(i + 1, points.size())) {
        targets.add(Target.distance(points.get(i), other));
      }
    }
    return targets;
  }

  private List<Target> lineParallel() {
    return List.of(
        Target.distance(at("line", 'A', 1), at("line", 'B', 1)),
        Target.distance(at("line", 'A', 1), at("line", 'B', n)),
        Target.distance(at("line", 'A', n), at("line", 'B', n)),
        Target.distance(at("line", 'A', n), at("line", 'B', 1)));
  }

  private List<Target> offsets(String feature, int from, int to) {
    return walk(from, to).stream()
        .map(mark -> Target.at(MeasuredQuantity.OFFSET, PointName.at(feature, mark)))
        .toList();
  }

  private List<Target> rafterPairs() {
    return setOut.building().roof() == Roof.GABLE ? clearSpan("tip") : List.of();
  }

  private List<Target> wallSquare() {
    List<Target> targets = new ArrayList<>();
    for (char letter : new char[] {'A', 'B'}) {
      String first = new GridMark(letter, 1).text();
      String last = new GridMark(letter, n).text();
      targets.addAll(
          allPairs(
              List.of(
                  new PointName("wall", first, "foot"),
                  new PointName("wall", last, "foot"),
                  new PointName("wall", last, "eave"),
                  new PointName("wall", first, "eave"))));
    }
    return targets;
  }

  private List<Target> columnPlumb() {
    return walk(1, n).stream()
        .map(mark -> PointName.at("column", mark))
        .flatMap(
            column ->
                Stream.of(Axis.values())
                    .map(axis -> Target.along(MeasuredQuantity.TILT, column, axis)))
        .toList();
  }

  /** Chained from frame to frame: out along A, back along B. */
  private List<Target> spacing(String feature) {
    List<Target> targets = new ArrayList<>();
    for (int i = 1; i < n; i++) {
      targets.add(Target.distance(at(feature, 'A', i), at(feature, 'A', i + 1)));
    }
    for (int i = n; i > 1; i--) {
      targets.add(Target.distance(at(feature, 'B', i), at(feature, 'B', i - 1)));
    }
    return targets;
  }

  private List<Target> apexSpacing() {
    List<Target> targets = new ArrayList<>();
    for (int i = 1; i < n && setOut.building().roof() == Roof.GABLE; i++) {
      targets.add(Target.distance(apex(i), apex(i + 1)));
    }
    return targets;
  }

  private List<Target> clearSpan(String feature) {
    return setOut.portalFrameNumbers().stream()
        .map(number -> Target.distance(at(feature, 'A', number), at(feature, 'B', number)))
        .toList();
  }

  private List<Target> overallLength() {
    return Stream.of('A', 'B')
        .map(
            letter ->
                Target.distance(
                    PointName.at("base", new GridMark(letter, 1), Face.LOW),
                    PointName.at("base", new GridMark(letter, n), Face.HIGH)))
        .toList();
  }

  /** Out along side A, back along side B. */
  private static List<GridMark> walk(int from, int to) {
    List<GridMark> marks = new ArrayList<>();
    for (int i = from; i <= to; i++) {
      marks.add(new GridMark('A', i));
    }
    for (int i = to; i >= from; i--) {
      marks.add(new GridMark('B', i));
    }
    return marks;
  }

  private static List<Target> both(List<Target> first, List<Target> second) {
    return Stream.concat(first.stream(), second.stream()).toList();
  }

  private static PointName at(String feature, char letter, int number) {
    return PointName.at(feature, new GridMark(letter, number));
  }

  private static PointName apex(int number) {
    return new PointName("apex", Integer.toString(number), "");
  }
}
