package datumpeg.analysis.signoff;

import java.time.Instant;

/**
 * Someone takes an item as it is.
 *
 * @param stage the stage's id
 * @param item the item's key, such as {@code slab-square A1}
 * @param found how the item stood then; the acceptance holds only while it stands so
 * @param by who accepts it
 * @param reference the engineer's reference, such as a letter's number
 * @param why the reason
 */
public record Acceptance(
    String stage, String item, String found, String by, String reference, String why, Instant at) {

  /**
   * @throws IllegalArgumentException if name, reference or reason is missing
   */
  public Acceptance {
    requireText(by, "the name of who accepts it");
    requireText(reference, "the engineer's reference");
    requireText(why, "the reason");
  }

  private static void requireText(String text, String what) {
    if (text.isBlank()) {
      throw new IllegalArgumentException("An acceptance needs " + what + ".");
    }
  }
}
