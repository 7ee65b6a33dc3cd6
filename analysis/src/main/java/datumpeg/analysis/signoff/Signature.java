package datumpeg.analysis.signoff;

import java.time.Instant;

/**
 * Someone closes a hold point.
 *
 * @param stage the stage's id
 * @param statement what was signed, item by item; the signature holds only while that is so
 */
public record Signature(String stage, String by, String statement, Instant at) {

  /**
   * @throws IllegalArgumentException if the name is missing
   */
  public Signature {
    if (by.isBlank()) {
      throw new IllegalArgumentException("A signature needs a name.");
    }
  }
}
