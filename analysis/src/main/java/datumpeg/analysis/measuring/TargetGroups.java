package datumpeg.analysis.measuring;

import datumpeg.analysis.building.PointName;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Many targets in one sentence, those of one kind together: "the levels of slab corners A1, A4; the
 * distances between the feet of columns A1 and A2, A2 and A3".
 */
final class TargetGroups {
  private TargetGroups() {}

  /**
   * A target within its group.
   *
   * @param lead what the group begins with
   * @param item what tells this one from the others
   */
  private record Member(String lead, String item) {}

  static String of(List<Target> targets) {
    Map<String, List<Target>> groups = new LinkedHashMap<>();
    targets.stream()
        .distinct()
        .forEach(
            target ->
                groups
                    .computeIfAbsent(member(target).lead(), lead -> new ArrayList<>())
                    .add(target));
    return groups.values().stream().map(TargetGroups::group).collect(Collectors.joining("; "));
  }

  private static String group(List<Target> targets) {
    return targets.size() == 1
        ? TargetWords.of(targets.get(0))
        : member(targets.get(0)).lead()
            + " "
            + targets.stream()
                .map(target -> member(target).item())
                .collect(Collectors.joining(", "));
  }

  private static Member member(Target target) {
    return switch (target.quantity()) {
      case DISTANCE -> distance(target);
      case HEIGHT -> at("the levels of", target);
      case STAFF -> at("the staff on", target);
      case OFFSET ->
          TargetWords.isGap(target)
              ? at("the gaps under the straightedge on", target)
              : at("the offsets from the string line of", target);
      case TILT -> at("the tilts" + TargetWords.axis(target) + " of", target);
      case PLUMB_OFFSET ->
          at("the offsets from the plumb line" + TargetWords.axis(target) + " of", target);
      case ATTRIBUTE -> new Member("the answers to", target.question());
    };
  }

  private static Member distance(Target target) {
    PointName one = target.first();
    PointName other = target.second();
    Optional<String> points = PointWords.several(one);
    return points
        .filter(all -> points.equals(PointWords.several(other)))
        .map(
            all ->
                new Member(
                    "the distances between " + all,
                    PointWords.among(one) + " and " + PointWords.among(other)))
        .orElseGet(() -> new Member("the distances", TargetWords.fromTo(target)));
  }

  private static Member at(String lead, Target target) {
    PointName point = target.first();
    return PointWords.several(point)
        .map(all -> new Member(lead + " " + all, PointWords.among(point)))
        .orElseGet(() -> new Member(lead, PointWords.of(point)));
  }
}
