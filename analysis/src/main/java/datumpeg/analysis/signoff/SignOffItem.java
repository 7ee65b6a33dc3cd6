package datumpeg.analysis.signoff;

import java.util.Optional;

/**
 * One item of a stage's check list.
 *
 * @param key how an acceptance names it: check and target, {@code question NAME}, {@code
 *     not-measured}, {@code slip-suspected}
 * @param found how it stands, in words and numbers
 * @param how by what it is closed, or why it is open
 * @param acceptance by which it is taken as it is
 */
public record SignOffItem(String key, String found, How how, Optional<Acceptance> acceptance) {

  /** By what an item is closed, or why it is open. */
  public enum How {
    CONFORMS,
    /** It conforms in a later round: what was wrong was put right, and measured again. */
    REWORKED,
    ACCEPTED,
    ANSWERED,
    /** Out of its limits. */
    NONCONFORMING,
    /** Too close to call: as open as what is out of its limits. */
    UNDECIDED,
    /** Something it stands on was moved since. */
    STALE,
    NOT_MEASURED,
    /** Readings contradict each other. */
    CONTRADICTION,
    NOT_ANSWERED,
    ANSWERED_NO;

    public boolean isClosed() {
      return this == CONFORMS || this == REWORKED || this == ACCEPTED || this == ANSWERED;
    }
  }

  public boolean isClosed() {
    return how.isClosed();
  }

  /** The same item, closed by an acceptance that is about how it stands now. */
  SignOffItem accepted(Optional<Acceptance> by) {
    return isClosed() || by.isEmpty() ? this : new SignOffItem(key, found, How.ACCEPTED, by);
  }

  /** What a signature vouches for. */
  String statement() {
    return key
        + ": "
        + found
        + acceptance.map(one -> "; accepted as it is by " + one.by()).orElse("");
  }
}
