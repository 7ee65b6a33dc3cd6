package datumpeg.bridge.frame;

import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Unit;

/** What one frame turned out to be. */
public sealed interface Decoded {

  /**
   * A measured value.
   *
   * @param valueText the number as the meter wrote it, with its sign; of feet and inches the whole
   *     text with its marks
   * @param unit the unit the line named, or the profile's where the line named none
   * @param siValue metres, or radians
   */
  record Measured(String valueText, Unit unit, double siValue) implements Decoded {

    public Measured {
      if (!Double.isFinite(siValue)) {
        throw new IllegalArgumentException("a measured value must be finite, found " + siValue);
      }
    }

    /** Length or angle. */
    public Dimension dimension() {
      return unit.dimension();
    }
  }

  /**
   * Something else: a status line, an echo, noise. Counted, never an error.
   *
   * @param reason why
   * @param detail the reason in words, naming what was found
   */
  record NotAReading(Reason reason, String detail) implements Decoded {}

  /** Why a frame is not a reading. */
  enum Reason {
    /** Words only. */
    NO_NUMBER,
    /** Battery, temperature, error or another state of the meter. */
    STATUS,
    /** A command that the meter sent back, or a prompt. */
    ECHO,
    /** More than one number could be the value. */
    AMBIGUOUS,
    /** A unit this decoding does not know, or other text after the value. */
    UNKNOWN_UNIT,
    /** A number that is not written as one. */
    MALFORMED,
    /** Bytes that are no text. */
    UNREADABLE
  }
}
