package datumpeg.analysis.slip;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A and B exchanged throughout a set: what was noted for a target belongs to its mirror image. Told
 * only where each target's mirror image was read as often in the same set; where it was not, there
 * is no reading to put in its place.
 */
final class SideSwap {
  private SideSwap() {}

  /** With the names alone exchanged, and with the signs of tilts too: read from the other end. */
  static List<Slip> of(List<SlipReading> set) {
    Optional<Map<String, Double>> swapped = swapped(set);
    if (swapped.isEmpty() || swapped.get().isEmpty()) {
      return List.of();
    }
    Map<String, Double> values = swapped.get();
    List<SlipReading> touched = set.stream().filter(r -> values.containsKey(r.id())).toList();
    List<Slip> slips = new ArrayList<>();
    String all = "A and B exchanged in all " + touched.size() + " readings of one set";
    slips.add(new Slip.Mirrored(touched, values, all));
    if (touched.stream().allMatch(SlipReading::isTilt)) {
      Map<String, Double> turned = new LinkedHashMap<>();
      values.forEach((id, value) -> turned.put(id, -value));
      slips.add(new Slip.Mirrored(touched, turned, all + ", read from the building's other end"));
    }
    return slips;
  }

  /** New values by reading id, without those that stay; empty if a mirror image is missing. */
  private static Optional<Map<String, Double>> swapped(List<SlipReading> set) {
    Map<String, List<SlipReading>> byTarget = new LinkedHashMap<>();
    for (SlipReading reading : set) {
      byTarget.computeIfAbsent(key(reading, reading.target()), k -> new ArrayList<>()).add(reading);
    }
    Map<String, Double> values = new LinkedHashMap<>();
    for (Map.Entry<String, List<SlipReading>> entry : byTarget.entrySet()) {
      SlipReading first = entry.getValue().get(0);
      Optional<Target> mirror = mirrored(first.target());
      List<SlipReading> others =
          mirror.map(target -> byTarget.get(key(first, target))).orElse(null);
      if (others == null || others.size() != entry.getValue().size()) {
        return Optional.empty();
      }
      if (!others.equals(entry.getValue())) {
        for (int i = 0; i < others.size(); i++) {
          values.put(entry.getValue().get(i).id(), others.get(i).value());
        }
      }
    }
    return Optional.of(values);
  }

  private static String key(SlipReading reading, Target target) {
    return target.quantity().text() + " " + target.text() + " " + reading.face();
  }

  /** The target on the other side of the building; empty if a point is of neither side. */
  static Optional<Target> mirrored(Target target) {
    List<PointName> points = new ArrayList<>();
    for (PointName point : target.points()) {
      Optional<GridMark> mark = point.gridMark();
      if (mark.isEmpty() || mark.get().letter() > 'B') {
        return Optional.empty();
      }
      char other = mark.get().letter() == 'A' ? 'B' : 'A';
      points.add(
          new PointName(
              point.feature(), new GridMark(other, mark.get().number()).text(), point.part()));
    }
    if (points.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        target.quantity() == MeasuredQuantity.DISTANCE
            ? Target.distance(points.get(0), points.get(1))
            : new Target(target.quantity(), points, target.axis(), target.question()));
  }
}
