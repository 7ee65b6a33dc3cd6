package datumpeg.bridge.json;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Objects;

/** Any other JSON number, kept digit by digit as it was written. Has no canonical form here. */
public record JsonDecimal(BigDecimal value) implements JsonValue {
  /** No double needs more digits to be told from its neighbours (IEEE 754-2019, section 5.12.2). */
  private static final int MOST_DIGITS = 17;

  public JsonDecimal {
    Objects.requireNonNull(value, "value");
  }

  /**
   * The decimal of fewest digits that reads back as the same double. The same on every Java
   * version, which {@link Double#toString} is not (JDK-4511638).
   *
   * @throws IllegalArgumentException if the value is not finite: JSON has no such number
   */
  public static JsonDecimal of(double value) {
    BigDecimal exact = exact(value);
    for (int digits = 1; digits < MOST_DIGITS; digits++) {
      BigDecimal shorter = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
      if (shorter.doubleValue() == value) {
        return trimmed(shorter);
      }
    }
    return trimmed(exact.round(new MathContext(MOST_DIGITS, RoundingMode.HALF_EVEN)));
  }

  /**
   * The value rounded half-even to so many decimals, without needless zeros but with at least one
   * decimal: 11.2, 0.0.
   *
   * @throws IllegalArgumentException if the value is not finite: JSON has no such number
   */
  public static JsonDecimal rounded(double value, int decimals) {
    return trimmed(exact(value).setScale(decimals, RoundingMode.HALF_EVEN));
  }

  private static BigDecimal exact(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("JSON has no number for " + value);
    }
    return new BigDecimal(value);
  }

  private static JsonDecimal trimmed(BigDecimal value) {
    BigDecimal stripped = value.stripTrailingZeros();
    return new JsonDecimal(stripped.scale() < 1 ? stripped.setScale(1) : stripped);
  }

  @Override
  public String describe() {
    return "a decimal number";
  }
}
