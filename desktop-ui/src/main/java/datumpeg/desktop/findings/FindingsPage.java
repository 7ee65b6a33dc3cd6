package datumpeg.desktop.findings;

import datumpeg.desktop.text.Standing;
import java.util.List;
import java.util.Optional;

/**
 * All that the findings screen shows.
 *
 * @param title the job and its site
 * @param sentence why there is nothing to show; empty when there is
 * @param stages the job's stages, in the order of the work
 * @param shown the chosen stage, if it was measured
 * @param behind the readings behind a number that was opened
 * @param trouble why what was wanted last could not be done; may be empty
 */
record FindingsPage(
    String title,
    String sentence,
    List<StageChoice> stages,
    Optional<ShownStage> shown,
    Optional<Behind> behind,
    String trouble) {
  FindingsPage {
    stages = List.copyOf(stages);
  }

  /**
   * A stage that can be chosen.
   *
   * @param gravest how its gravest outcome stands
   * @param measured whether it has readings
   */
  record StageChoice(
      String stage, String name, Standing gravest, boolean measured, boolean chosen) {}

  /**
   * What one stage's readings say.
   *
   * @param stage its id
   * @param standing how the answer stands
   * @param answer can we go on
   * @param first what to do first; may be empty
   * @param causes what is behind the outcomes, the largest first
   * @param causesSentence said when there is no cause
   * @param toDraw of which the drawings are made, to be chosen from
   * @param outcomes the gravest first
   */
  record ShownStage(
      String stage,
      Standing standing,
      String answer,
      String first,
      List<CauseCard> causes,
      String causesSentence,
      List<String> notes,
      StageToDraw toDraw,
      List<OutcomeRow> outcomes) {
    ShownStage {
      causes = List.copyOf(causes);
      notes = List.copyOf(notes);
      outcomes = List.copyOf(outcomes);
    }
  }

  /**
   * One thing that is wrong, told once.
   *
   * @param number at which it stands on the drawing of where to look
   * @param things what was likely moved when it is dealt with, as {@code moved} names it
   */
  record CauseCard(
      int number,
      Standing standing,
      String sentence,
      String action,
      String symptoms,
      List<String> things) {
    CauseCard {
      things = List.copyOf(things);
    }
  }

  /** The readings behind a number. */
  record Behind(String title, String sentence, List<BehindRow> rows) {
    Behind {
      rows = List.copyOf(rows);
    }
  }

  /**
   * One of them.
   *
   * @param adjusted what the adjustment makes of it; empty where it is in none
   * @param suspected whether a slip is suspected in it
   */
  record BehindRow(StoredRows.Row row, String adjusted, boolean suspected) {}
}
