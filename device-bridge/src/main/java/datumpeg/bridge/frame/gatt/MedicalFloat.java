package datumpeg.bridge.frame.gatt;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * The two floats of IEEE 11073-20601: a mantissa times ten to an exponent, both two's complements.
 * The exponent carries the precision, so 2 and 2.00 stay apart.
 */
final class MedicalFloat {
  private MedicalFloat() {}

  /** 16 bits: exponent 4, mantissa 12. Empty for the five values that are no numbers. */
  static Optional<BigDecimal> ofSixteenBits(int bits) {
    // Before the sign is extended: the mantissas 0x7FE to 0x802 are no numbers.
    int mantissa = bits & 0xFFF;
    if (mantissa >= 0x7FE && mantissa <= 0x802) {
      return Optional.empty();
    }
    return Optional.of(value(mantissa << 20 >> 20, (bits >> 12 & 0xF) << 28 >> 28));
  }

  /** 32 bits: exponent 8, mantissa 24. Empty for the five values that are no numbers. */
  static Optional<BigDecimal> ofThirtyTwoBits(int bits) {
    int mantissa = bits & 0xFFFFFF;
    if (mantissa >= 0x7FFFFE && mantissa <= 0x800002) {
      return Optional.empty();
    }
    return Optional.of(value(mantissa << 8 >> 8, bits >> 24));
  }

  private static BigDecimal value(int mantissa, int exponent) {
    return BigDecimal.valueOf(mantissa, -exponent);
  }
}
