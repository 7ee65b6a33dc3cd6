package datumpeg.desktop.trend;

import java.util.List;

/**
 * All that the trend screen shows.
 *
 * @param title the job
 * @param checks to choose from, by id and name
 * @param check the chosen one's id; empty if there is none
 * @param targets of the chosen check
 * @param target the chosen one
 * @param points in the order of the work
 * @param unit of all numbers
 * @param sentence what the drawing says, or why there is none
 * @param changes what changed from point to point, a sentence each
 * @param spoken the drawing in words
 */
record TrendPage(
    String title,
    List<Choice> checks,
    String check,
    List<String> targets,
    String target,
    List<TrendPoint> points,
    String unit,
    String sentence,
    List<String> changes,
    String spoken) {
  TrendPage {
    checks = List.copyOf(checks);
    targets = List.copyOf(targets);
    points = List.copyOf(points);
    changes = List.copyOf(changes);
  }

  static TrendPage empty(String title, String sentence) {
    return new TrendPage(
        title, List.of(), "", List.of(), "", List.of(), "", sentence, List.of(), sentence);
  }

  /** A check that can be chosen. */
  record Choice(String id, String name) {}
}
