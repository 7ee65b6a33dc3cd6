package datumpeg.analysis.adjust;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Finds parts of a plan that only two points connect to the rest, with a mirror image close by. */
final class MirrorImages {
  /**
   * A point nearer to the hinge line than this share of the hinge's length may be on its other side
   * in truth. Our choice: approximate coordinates come from a drawing the builder may have missed.
   */
  private static final double NEAR = 0.05;

  private final AdjustedPlan plan;
  private final Map<String, Set<String>> neighbours = new HashMap<>();
  private final double longestMetres;

  MirrorImages(AdjustedPlan plan) {
    this.plan = plan;
    double longest = 0;
    for (String one : plan.names()) {
      neighbours.put(one, new LinkedHashSet<>());
      for (String other : plan.names()) {
        longest = Math.max(longest, one.equals(other) ? 0 : plan.apartMetres(one, other));
      }
    }
    this.longestMetres = longest;
    for (MeasuredDistance taken : plan.distances()) {
      neighboursOf(taken.from()).add(taken.to());
      neighboursOf(taken.to()).add(taken.from());
    }
  }

  private Set<String> neighboursOf(String name) {
    return neighbours.computeIfAbsent(name, key -> new LinkedHashSet<>());
  }

  List<MirrorAmbiguity> find() {
    List<MirrorAmbiguity> found = new ArrayList<>();
    List<String> names = plan.names();
    SeparatingPairs pairs = new SeparatingPairs(numbered(names));
    for (int i = 0; i < names.size(); i++) {
      boolean[] partners = pairs.partnersOf(i);
      for (int j = i + 1; j < names.size(); j++) {
        PointPair hinge = new PointPair(names.get(i), names.get(j));
        if (partners[j] || isLongest(hinge)) {
          wings(hinge).forEach(wing -> ambiguity(hinge, wing).ifPresent(found::add));
        }
      }
    }
    return found;
  }

  private int[][] numbered(List<String> names) {
    Map<String, Integer> numbers = new HashMap<>();
    names.forEach(name -> numbers.put(name, numbers.size()));
    return names.stream()
        .map(
            name ->
                neighboursOf(name).stream()
                    .mapToInt(other -> numbers.getOrDefault(other, 0))
                    .toArray())
        .toArray(int[][]::new);
  }

  /**
   * Parts that fall off when the hinge's points are taken away. If all else hangs together there is
   * one only: the whole figure, of which distances do not say which face is up; it is told once,
   * for the longest hinge.
   */
  private List<Set<String>> wings(PointPair hinge) {
    List<Set<String>> parts = new ArrayList<>();
    for (String name : plan.names()) {
      boolean placed = parts.stream().anyMatch(part -> part.contains(name));
      if (!placed && !name.equals(hinge.first()) && !name.equals(hinge.second())) {
        parts.add(reached(name, hinge));
      }
    }
    return parts.size() == 1 && !isLongest(hinge) ? List.of() : parts;
  }

  private boolean isLongest(PointPair hinge) {
    return plan.apartMetres(hinge.first(), hinge.second()) >= longestMetres;
  }

  private Set<String> reached(String start, PointPair hinge) {
    Set<String> part = new LinkedHashSet<>(Set.of(start));
    List<String> open = new ArrayList<>(part);
    while (!open.isEmpty()) {
      String at = open.remove(open.size() - 1);
      for (String next : neighboursOf(at)) {
        if (!next.equals(hinge.first()) && !next.equals(hinge.second()) && part.add(next)) {
          open.add(next);
        }
      }
    }
    return part;
  }

  private Optional<MirrorAmbiguity> ambiguity(PointPair hinge, Set<String> wing) {
    double length = plan.apartMetres(hinge.first(), hinge.second());
    double farthest = 0;
    for (String name : wing) {
      farthest =
          Math.max(farthest, Math.abs(plan.offset(name, hinge.first(), hinge.second()).value()));
    }
    List<String> points = plan.names().stream().filter(wing::contains).toList();
    return farthest < NEAR * length
        ? Optional.of(new MirrorAmbiguity(points, hinge, 2 * farthest))
        : Optional.empty();
  }
}
