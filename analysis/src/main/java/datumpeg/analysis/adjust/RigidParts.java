package datumpeg.analysis.adjust;

import java.util.ArrayList;
import java.util.List;

/**
 * Which points hold each other: no unnoticed movement changes a distance between any two of them.
 */
final class RigidParts {
  private static final double STILL = 1e-7;

  private final PlanState state;
  private final NullSpace free;

  RigidParts(PlanState state, NullSpace free) {
    this.state = state;
    this.free = free;
  }

  /** The largest such set, in the caller's order; the first found among equals. */
  List<String> largest() {
    List<String> largest = List.of();
    for (String start : state.names()) {
      List<String> part = grownFrom(start);
      if (part.size() > largest.size()) {
        largest = part;
      }
    }
    List<String> kept = largest;
    return state.names().stream().filter(kept::contains).toList();
  }

  private List<String> grownFrom(String start) {
    List<String> part = new ArrayList<>(List.of(start));
    for (String candidate : state.names()) {
      if (!candidate.equals(start) && part.stream().allMatch(member -> hold(member, candidate))) {
        part.add(candidate);
      }
    }
    return part;
  }

  private boolean hold(String one, String other) {
    return free.seenBy(state.gradient(one, other)) <= STILL;
  }
}
