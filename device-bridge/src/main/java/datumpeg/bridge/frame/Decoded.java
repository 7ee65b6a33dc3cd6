package datumpeg.bridge.frame;

import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Unit;
import java.util.Objects;

/** What one frame turned out to be. */
public sealed interface Decoded {

  /**
   * A measured value. Keeps the bytes of its text and makes a text of them when asked: a value read
   * out of a stream shares the bytes that came with it, so that who keeps many for long keeps their
   * texts instead. Immutable.
   */
  final class Measured implements Decoded {
    private final Bytes bytes;
    private final int textStart;
    private final int textLength;
    private final Unit unit;
    private final double siValue;

    /**
     * A value.
     *
     * @param valueText the number as the meter wrote it, with its sign; of feet and inches the
     *     whole text with its marks
     * @param unit the unit the line named, or the profile's where the line named none
     * @param siValue metres, or radians
     * @throws IllegalArgumentException if the value is not finite
     */
    public Measured(String valueText, Unit unit, double siValue) {
      this(Bytes.ofText(valueText), unit, siValue);
    }

    private Measured(Bytes text, Unit unit, double siValue) {
      this(text, 0, text.length(), unit, siValue);
    }

    /** A value whose text stands among these bytes. */
    Measured(Bytes bytes, int textStart, int textLength, Unit unit, double siValue) {
      if (!Double.isFinite(siValue)) {
        throw new IllegalArgumentException("a measured value must be finite, found " + siValue);
      }
      this.bytes = bytes;
      this.textStart = textStart;
      this.textLength = textLength;
      this.unit = Objects.requireNonNull(unit);
      this.siValue = siValue;
    }

    /** The number as the meter wrote it, made anew each time. */
    public String valueText() {
      return bytes.text(textStart, textStart + textLength);
    }

    public Unit unit() {
      return unit;
    }

    /** Metres, or radians. */
    public double siValue() {
      return siValue;
    }

    /** Length or angle. */
    public Dimension dimension() {
      return unit.dimension();
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Measured that
          && unit == that.unit
          && Double.compare(siValue, that.siValue) == 0
          && valueText().equals(that.valueText());
    }

    @Override
    public int hashCode() {
      return Objects.hash(valueText(), unit, siValue);
    }

    @Override
    public String toString() {
      return "Measured[" + valueText() + " " + unit + ", " + siValue + "]";
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
