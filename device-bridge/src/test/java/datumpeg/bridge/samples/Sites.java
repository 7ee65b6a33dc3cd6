package datumpeg.bridge.samples;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.simulate.SimulatedColumn;
import datumpeg.analysis.simulate.SimulatedSite;
import java.util.ArrayList;
import java.util.List;

/** Short ways to write down what is true of a site, in millimetres. */
final class Sites {
  private Sites() {}

  static SimulatedSite shifted(SimulatedSite site, String point, double x, double y, double z) {
    PointName name = PointName.parse(point).orElseThrow();
    return site.withShift(name, new Position(x / 1000, y / 1000, z / 1000));
  }

  static SimulatedSite leaning(SimulatedSite site, String mark, double along, double across) {
    return bowed(site, mark, along, across, 0, 0);
  }

  static SimulatedSite bowed(
      SimulatedSite site,
      String mark,
      double along,
      double across,
      double bowAlong,
      double bowAcross) {
    return site.withColumn(
        GridMark.parse(mark).orElseThrow(),
        new SimulatedColumn(along / 1000, across / 1000, bowAlong / 1000, bowAcross / 1000));
  }

  /** The grid marks of both walls, A1 … An, B1 … Bn. */
  static List<String> marks(SimulatedSite site) {
    List<String> marks = new ArrayList<>();
    for (String letter : List.of("A", "B")) {
      site.setOut().portalFrameNumbers().forEach(number -> marks.add(letter + number));
    }
    return marks;
  }

  /** The tilts of every column, along and across. */
  static List<String> tilts(SimulatedSite site) {
    return marks(site).stream()
        .flatMap(mark -> List.of("/along", "/across").stream().map(axis -> "column." + mark + axis))
        .toList();
  }

  /** The plumb line's offsets at the foot and the eave of every column, both ways. */
  static List<String> plumbOffsets(SimulatedSite site) {
    return marks(site).stream()
        .flatMap(mark -> List.of("/along", "/across").stream().map(axis -> mark + axis))
        .flatMap(place -> List.of("base.", "eave.").stream().map(feature -> feature + place))
        .toList();
  }

  /** The two walls' spacings at a height, from every frame to every later one. */
  static List<String> spacings(SimulatedSite site, String feature) {
    int last = site.setOut().building().portalFrameCount();
    List<String> targets = new ArrayList<>();
    for (String letter : List.of("A", "B")) {
      for (int step = 1; step < last; step++) {
        for (int number = 1; number + step <= last; number++) {
          targets.add(low(feature, letter + number) + "-" + low(feature, letter + (number + step)));
        }
      }
    }
    return targets;
  }

  /** Measured from low face to low face, where a tape or a meter finds an edge. */
  private static String low(String feature, String mark) {
    return feature + "." + mark + "/low";
  }

  /** The clear spans of every frame. */
  static List<String> clearSpans(SimulatedSite site, String feature) {
    return site.setOut().portalFrameNumbers().stream()
        .map(number -> feature + ".A" + number + "-" + feature + ".B" + number)
        .toList();
  }
}
