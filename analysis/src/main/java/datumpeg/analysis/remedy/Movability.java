package datumpeg.analysis.remedy;

import datumpeg.analysis.measuring.Stage;
import java.util.List;

/**
 * What can still be moved at a stage (common practice, no source): lines until the walls stand,
 * bases until the anchors are drilled, leans and tops until the bolts are tightened.
 */
public record Movability(boolean lines, boolean bases, boolean tops) {

  private static final List<String> ORDER = Stage.STANDARD.stream().map(Stage::id).toList();

  /**
   * What can be moved at a stage of a job; a stage of the job's own counts as the standard one
   * before it.
   */
  public static Movability at(String stageId, List<Stage> stages) {
    int position = -1;
    for (Stage stage : stages) {
      if (ORDER.contains(stage.id())) {
        position = ORDER.indexOf(stage.id());
      }
      if (stage.id().equals(stageId)) {
        break;
      }
    }
    return new Movability(
        position <= ORDER.indexOf("standing"),
        position <= ORDER.indexOf("standing"),
        position <= ORDER.indexOf("tightening"));
  }

  /** A move as it is asked for, or as the engineer is asked about it where it is fixed by now. */
  public static String said(String move, boolean movable) {
    return movable
        ? move + "."
        : "Fixed by now: ask the engineer. It would take to "
            + Character.toLowerCase(move.charAt(0))
            + move.substring(1)
            + ".";
  }
}
