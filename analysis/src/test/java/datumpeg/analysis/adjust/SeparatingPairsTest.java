package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

final class SeparatingPairsTest {
  private static int[][] graph(int points, List<int[]> edges) {
    List<List<Integer>> lists = new ArrayList<>();
    for (int i = 0; i < points; i++) {
      lists.add(new ArrayList<>());
    }
    for (int[] edge : edges) {
      lists.get(edge[0]).add(edge[1]);
      lists.get(edge[1]).add(edge[0]);
    }
    return lists.stream()
        .map(list -> list.stream().mapToInt(Integer::intValue).toArray())
        .toArray(int[][]::new);
  }

  /** Two quadrilaterals with both diagonals that share the side 1-2. */
  @Test
  void theSharedSideOfTwoBracedFiguresSeparatesThem() {
    int[][] graph =
        graph(
            6,
            List.of(
                new int[] {0, 1},
                new int[] {0, 2},
                new int[] {0, 3},
                new int[] {1, 2},
                new int[] {1, 3},
                new int[] {2, 3},
                new int[] {1, 4},
                new int[] {1, 5},
                new int[] {2, 4},
                new int[] {2, 5},
                new int[] {4, 5}));
    SeparatingPairs pairs = new SeparatingPairs(graph);
    assertArrayEquals(new boolean[] {false, false, true, false, false, false}, pairs.partnersOf(1));
    assertArrayEquals(new boolean[6], pairs.partnersOf(0));
  }

  /** By taking both away and counting parts, on drawn figures, also ones in parts. */
  @Test
  void agreesWithCountingParts() {
    SplittableRandom random = new SplittableRandom(11);
    for (int run = 0; run < 300; run++) {
      int points = 3 + random.nextInt(7);
      List<int[]> edges = new ArrayList<>();
      for (int i = 0; i < points; i++) {
        for (int j = 0; j < i; j++) {
          if (random.nextInt(100) < 45) {
            edges.add(new int[] {i, j});
          }
        }
      }
      int[][] graph = graph(points, edges);
      SeparatingPairs pairs = new SeparatingPairs(graph);
      for (int i = 0; i < points; i++) {
        boolean[] partners = pairs.partnersOf(i);
        boolean whole = parts(graph, i, i) <= 1;
        for (int j = 0; j < points; j++) {
          boolean apart = j != i && parts(graph, i, j) > 1;
          if (whole) {
            assertEquals(apart, partners[j], "run " + run + ": " + i + ", " + j);
          } else {
            assertEquals(j != i, partners[j]);
          }
        }
      }
    }
  }

  private static int parts(int[][] graph, int away, int alsoAway) {
    boolean[] seen = new boolean[graph.length];
    seen[away] = true;
    seen[alsoAway] = true;
    int parts = 0;
    for (int i = 0; i < graph.length; i++) {
      if (!seen[i]) {
        parts++;
        reach(graph, i, seen);
      }
    }
    return parts;
  }

  private static void reach(int[][] graph, int at, boolean[] seen) {
    seen[at] = true;
    for (int next : graph[at]) {
      if (!seen[next]) {
        reach(graph, next, seen);
      }
    }
  }
}
