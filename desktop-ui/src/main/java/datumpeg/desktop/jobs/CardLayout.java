package datumpeg.desktop.jobs;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.Typeface;
import datumpeg.desktop.text.Standing;
import java.util.List;
import java.util.Optional;

/**
 * Where everything of a job's card stands, for one width and one size of letters; pixels from the
 * card's upper left corner. Immutable.
 *
 * @param lines of text
 * @param marks the shapes of standings
 * @param rules lines that divide, each as wide as its tile
 * @param tiles the stages
 */
record CardLayout(
    double height, List<Line> lines, List<Mark> marks, List<Rule> rules, List<Tile> tiles) {
  CardLayout {
    lines = List.copyOf(lines);
    marks = List.copyOf(marks);
    rules = List.copyOf(rules);
    tiles = List.copyOf(tiles);
  }

  /** The stage at a place. */
  Optional<StageTile> stageAt(double x, double y) {
    return tiles.stream().filter(tile -> tile.holds(x, y)).map(Tile::stage).findFirst();
  }

  /**
   * A line of text.
   *
   * @param y of the foot of its letters
   */
  record Line(String text, Typeface face, Ink ink, double x, double y) {}

  /** A shape around its middle. */
  record Mark(Standing standing, double x, double y, double size) {}

  record Rule(double left, double y, double width) {}

  /** The place of a stage. */
  record Tile(StageTile stage, double left, double top, double width, double height) {
    boolean holds(double x, double y) {
      return x >= left && x < left + width && y >= top && y < top + height;
    }
  }
}
