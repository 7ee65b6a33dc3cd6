package datumpeg.analysis.check;

import java.util.List;
import java.util.Locale;

/**
 * Something a reader of outcomes must know.
 *
 * @param text a sentence
 * @param readingIds the readings it is about, maybe none
 */
public record Note(Kind kind, String text, List<String> readingIds) {
  public Note {
    readingIds = List.copyOf(readingIds);
  }

  /** What the note is about. */
  public enum Kind {
    /** Readings contradict each other by more than their uncertainty. */
    SLIP_SUSPECTED,
    /** A check found a meter outside its stated accuracy: its readings since then are in doubt. */
    METER_OUTSIDE,
    /** A target of a check was not measured. */
    NOT_MEASURED,
    /** What was measured does not determine what was asked. */
    UNDETERMINED,
    /** The reading that would help most, and how much. */
    NEXT_MEASUREMENT,
    /** Something had to be assumed. */
    ASSUMED,
    /** The answer to a question of the stage. */
    ANSWERED,
    /** Worth knowing, nothing to do. */
    INFORMATION;

    public String text() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }
}
