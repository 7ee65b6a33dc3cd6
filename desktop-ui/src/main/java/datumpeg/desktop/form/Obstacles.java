package datumpeg.desktop.form;

import datumpeg.analysis.report.drawing.Box;
import datumpeg.analysis.report.drawing.Spot;
import java.util.ArrayList;
import java.util.List;

/**
 * What words must not stand on: other words, and the edges of what is drawn; on the grid only where
 * there is no other place. One thread.
 */
final class Obstacles {
  private final List<Box> words = new ArrayList<>();
  private final List<Edge> edges = new ArrayList<>();
  private final List<Edge> grid = new ArrayList<>();

  private record Edge(Spot from, Spot to) {}

  void words(Box box) {
    words.add(box);
  }

  void edge(Spot from, Spot to) {
    edges.add(new Edge(from, to));
  }

  void grid(Spot from, Spot to) {
    grid.add(new Edge(from, to));
  }

  void outline(List<Spot> corners) {
    for (int i = 0; i < corners.size(); i++) {
      edge(corners.get(i), corners.get((i + 1) % corners.size()));
    }
  }

  void box(Box box) {
    outline(
        List.of(
            new Spot(box.left(), box.top()),
            new Spot(box.right(), box.top()),
            new Spot(box.right(), box.bottom()),
            new Spot(box.left(), box.bottom())));
  }

  boolean areMet(Box box) {
    return words.stream().anyMatch(other -> overlap(box, other))
        || edges.stream().anyMatch(edge -> crosses(edge, box));
  }

  boolean isOnGrid(Box box) {
    return grid.stream().anyMatch(edge -> crosses(edge, box));
  }

  private static boolean overlap(Box one, Box other) {
    return one.left() < other.right()
        && other.left() < one.right()
        && one.top() < other.bottom()
        && other.top() < one.bottom();
  }

  /**
   * Whether a part of the edge lies within the box: the shares of its length at which it enters and
   * leaves the box's two strips. J. D. Foley, A. van Dam, S. K. Feiner, J. F. Hughes, Computer
   * Graphics: Principles and Practice (2nd ed., 1990), section 3.12.4, parametric line clipping.
   */
  private static boolean crosses(Edge edge, Box box) {
    double[] across = within(edge.from().x(), edge.to().x(), box.left(), box.right());
    double[] down = within(edge.from().y(), edge.to().y(), box.top(), box.bottom());
    return Math.max(across[0], down[0]) < Math.min(across[1], down[1]);
  }

  /** From which share of the way from one number to another it lies in a range, and to which. */
  private static double[] within(double from, double to, double least, double most) {
    double way = to - from;
    if (way == 0) {
      return from > least && from < most ? new double[] {0, 1} : new double[] {1, 0};
    }
    double one = (least - from) / way;
    double other = (most - from) / way;
    return new double[] {Math.max(0, Math.min(one, other)), Math.min(1, Math.max(one, other))};
  }
}
