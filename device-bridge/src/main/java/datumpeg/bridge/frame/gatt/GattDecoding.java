package datumpeg.bridge.frame.gatt;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.Decoded.Reason;
import datumpeg.bridge.frame.GeneralTextLine;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Optional;

/**
 * Reads one value of a characteristic. Total; a value of the wrong length or one that stands for
 * "no number" is not a reading. Immutable.
 */
public final class GattDecoding {
  /** Far beyond any length or angle; keeps a wild exponent from growing a number without bound. */
  private static final int MOST_DIGITS = 40;

  private final PresentationFormat format;
  private final int offset;

  public GattDecoding(PresentationFormat format) {
    this(format, 0);
  }

  /**
   * @param offset how many bytes stand before the value; more may follow it
   * @throws IllegalArgumentException if the offset is negative
   */
  public GattDecoding(PresentationFormat format, int offset) {
    if (offset < 0) {
      throw new IllegalArgumentException("the offset must be 0 or more bytes, found " + offset);
    }
    this.format = format;
    this.offset = offset;
  }

  /** What the bytes are. */
  public Decoded decode(Bytes value) {
    int count = format.format().byteCount();
    boolean whole = offset == 0 ? value.length() == count : value.length() >= offset + count;
    if (format.format() == GattFormat.UTF8) {
      return value.length() < offset
          ? tooShort(value)
          : new GeneralTextLine(format.unit()).decode(value.slice(offset, value.length()));
    }
    return whole ? number(value.slice(offset, offset + count)) : tooShort(value);
  }

  private NotAReading tooShort(Bytes value) {
    return new NotAReading(
        Reason.MALFORMED,
        "it has "
            + value.length()
            + " bytes; a value of "
            + format.format().word()
            + (offset == 0 ? " has " : " at offset " + offset + " needs ")
            + (offset + format.format().byteCount()));
  }

  private Decoded number(Bytes bytes) {
    return exact(bytes)
        .map(this::measured)
        .orElseGet(
            () -> new NotAReading(Reason.STATUS, "0x" + bytes.hex() + " stands for no number"));
  }

  private Decoded measured(BigDecimal value) {
    if (value.precision() - value.scale() > MOST_DIGITS || value.scale() > 2 * MOST_DIGITS) {
      return new NotAReading(Reason.MALFORMED, "a number of that exponent is no length or angle");
    }
    double siValue = format.unit().toSi(value.doubleValue()) + 0.0;
    return new Measured(value.toPlainString(), format.unit(), siValue);
  }

  private Optional<BigDecimal> exact(Bytes bytes) {
    if (format.format().isInteger()) {
      return Optional.of(integer(bytes).scaleByPowerOfTen(format.exponent())).map(this::plain);
    }
    long bits = bits(bytes).longValue();
    return switch (format.format()) {
      case FLOAT32 -> ofFloat(Float.intBitsToFloat((int) bits));
      case FLOAT64 -> ofDouble(Double.longBitsToDouble(bits));
      case MEDICAL16 -> MedicalFloat.ofSixteenBits((int) bits).map(this::plain);
      case MEDICAL32 -> MedicalFloat.ofThirtyTwoBits((int) bits).map(this::plain);
      default -> Optional.empty();
    };
  }

  /** A power of ten above 0 becomes digits: 12E+2 is 1200. */
  private BigDecimal plain(BigDecimal value) {
    return value.scale() < 0 && value.scale() > -MOST_DIGITS ? value.setScale(0) : value;
  }

  /** The shortest digits that name this float, as its display would show them. */
  private static Optional<BigDecimal> ofFloat(float value) {
    return Float.isFinite(value)
        ? Optional.of(new BigDecimal(Float.toString(value)))
        : Optional.empty();
  }

  private static Optional<BigDecimal> ofDouble(double value) {
    return Double.isFinite(value) ? Optional.of(BigDecimal.valueOf(value)) : Optional.empty();
  }

  private BigDecimal integer(Bytes bytes) {
    BigInteger value = bits(bytes);
    boolean negative = format.format().isSigned() && value.testBit(8 * bytes.length() - 1);
    return new BigDecimal(
        negative ? value.subtract(BigInteger.ONE.shiftLeft(8 * bytes.length())) : value);
  }

  private static BigInteger bits(Bytes bytes) {
    BigInteger value = BigInteger.ZERO;
    for (int index = bytes.length() - 1; index >= 0; index--) {
      value = value.shiftLeft(8).or(BigInteger.valueOf(bytes.at(index)));
    }
    return value;
  }
}
