package datumpeg.desktop.signoff;

import datumpeg.desktop.text.Standing;
import java.util.List;

/**
 * All that the screen shows.
 *
 * @param title the job's name
 * @param sentence why there is nothing to sign; empty when there is
 * @param stages every stage, with how its hold point stands in words
 * @param answer how the hold point of the chosen stage stands
 * @param items its check list, what is open first
 * @param maySign whether it can be signed now
 * @param photos of the stage, by their names
 * @param cautions what can hurt someone at this stage, and who decides
 */
record SignOffPage(
    String title,
    String sentence,
    List<StageChoice> stages,
    String answer,
    List<Item> items,
    boolean maySign,
    List<String> photos,
    List<String> cautions) {
  SignOffPage {
    stages = List.copyOf(stages);
    items = List.copyOf(items);
    photos = List.copyOf(photos);
    cautions = List.copyOf(cautions);
  }

  static SignOffPage empty(String title, String sentence) {
    return new SignOffPage(title, sentence, List.of(), "", List.of(), false, List.of(), List.of());
  }

  /** A stage to choose. */
  record StageChoice(String stage, String name, String state, boolean chosen) {}

  /**
   * An item of the check list.
   *
   * @param words closed or open, and by what
   * @param accepted by whose word it is taken as it is; empty if it is not
   */
  record Item(
      String key,
      String title,
      String found,
      Standing mark,
      boolean open,
      String words,
      String accepted) {}
}
