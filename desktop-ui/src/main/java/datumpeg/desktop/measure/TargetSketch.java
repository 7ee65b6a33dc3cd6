package datumpeg.desktop.measure;

import java.util.List;

/**
 * The part of the building that a target lies in, with the target lit: metres, x to the right and y
 * up, as seen in the view named. Immutable.
 *
 * @param view which view it is, in words
 * @param lines the building, then what is still to be measured, then the target
 * @param dots points, in the same order
 * @param names of grid marks
 * @param spoken the drawing in words
 */
record TargetSketch(
    String view, List<Line> lines, List<Dot> dots, List<Name> names, String spoken) {
  TargetSketch {
    lines = List.copyOf(lines);
    dots = List.copyOf(dots);
    names = List.copyOf(names);
  }

  /** What a line or a dot stands for. */
  enum Role {
    BUILDING,
    /** Still to be measured, in this view. */
    OPEN,
    /** To be measured now. */
    LIT
  }

  record Line(Role role, double fromX, double fromY, double toX, double toY) {}

  record Dot(Role role, double x, double y) {}

  /**
   * A name beside a place.
   *
   * @param right which side of the place it stands on: 1 right, −1 left, 0 in its middle
   * @param up 1 above, −1 below, 0 at its height
   */
  record Name(String text, double x, double y, int right, int up) {}
}
