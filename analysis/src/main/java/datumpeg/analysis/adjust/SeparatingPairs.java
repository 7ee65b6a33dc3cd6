package datumpeg.analysis.adjust;

import java.util.Arrays;

/**
 * Which two points of a figure hold it together: taken away, what is left falls apart. For each
 * point in turn the joints of the rest are found by one walk in depth (J. Hopcroft and R. Tarjan,
 * Algorithm 447: efficient algorithms for graph manipulation, Communications of the ACM 16, 1973,
 * recalled), so that all pairs take as many steps as points times distances. One thread.
 */
final class SeparatingPairs {
  private final int[][] neighbours;
  private final int[] order;
  private final int[] lowest;
  private final boolean[] joint;
  private int visited;

  /**
   * @param neighbours of each point, by number
   */
  SeparatingPairs(int[][] neighbours) {
    this.neighbours = neighbours;
    this.order = new int[neighbours.length];
    this.lowest = new int[neighbours.length];
    this.joint = new boolean[neighbours.length];
  }

  /**
   * Points without which, and without the one given, the rest is in several parts. Where the rest
   * is in parts without that one alone, all points are: some of them then join nothing further.
   */
  boolean[] partnersOf(int away) {
    Arrays.fill(order, 0);
    Arrays.fill(joint, false);
    visited = 0;
    int start = away == 0 ? 1 : 0;
    if (start >= order.length) {
      return joint.clone();
    }
    order[away] = -1;
    joint[start] = walk(start, away) > 1;
    if (visited < order.length - 1) {
      Arrays.fill(joint, true);
    }
    joint[away] = false;
    return joint.clone();
  }

  /** Walks on from a point; the number of branches that begin there. */
  private int walk(int at, int away) {
    order[at] = ++visited;
    lowest[at] = order[at];
    int branches = 0;
    for (int next : neighbours[at]) {
      if (next == away) {
        continue;
      }
      if (order[next] == 0) {
        branches++;
        walk(next, away);
        lowest[at] = Math.min(lowest[at], lowest[next]);
        joint[at] |= lowest[next] >= order[at];
      } else {
        lowest[at] = Math.min(lowest[at], order[next]);
      }
    }
    return branches;
  }
}
