package datumpeg.bridge.json;

import java.math.BigDecimal;
import java.util.Objects;

/** Any other JSON number, kept digit by digit as it was written. Has no canonical form here. */
public record JsonDecimal(BigDecimal value) implements JsonValue {
  public JsonDecimal {
    Objects.requireNonNull(value, "value");
  }

  /**
   * The shortest decimal that reads back as the same double.
   *
   * @throws IllegalArgumentException if the value is not finite: JSON has no such number
   */
  public static JsonDecimal of(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("JSON has no number for " + value);
    }
    return new JsonDecimal(BigDecimal.valueOf(value));
  }

  @Override
  public String describe() {
    return "a decimal number";
  }
}
