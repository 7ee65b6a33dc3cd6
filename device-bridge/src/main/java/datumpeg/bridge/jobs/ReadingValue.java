package datumpeg.bridge.jobs;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.analysis.quantity.QuantityFormatException;
import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.record.DerivedNumber;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.util.OptionalDouble;

/** What the text of a reading comes to: metres, radians, or 1 for yes and 0 for no. */
public final class ReadingValue {
  private ReadingValue() {}

  /**
   * @param unit empty if the value carries its own; always empty for yes and no
   * @throws QuantityFormatException if value, unit and quantity do not fit together
   */
  public static double si(MeasuredQuantity quantity, String value, String unit) {
    if (quantity == MeasuredQuantity.ATTRIBUTE) {
      return yesOrNo(value, unit);
    }
    Quantity read = Quantity.parse(value, unit, quantity.dimension());
    if (read.dimension() != quantity.dimension()) {
      throw new QuantityFormatException(
          "A "
              + quantity.text()
              + " is "
              + (quantity.dimension() == Dimension.LENGTH ? "a length" : "an angle")
              + ", found '"
              + (value + " " + unit).strip()
              + "'; expected a unit of "
              + String.join(", ", Unit.symbols(quantity.dimension()))
              + ".");
    }
    return read.siValue();
  }

  /** Works out the number beside a stored reading again, for the record's verification. */
  public static OptionalDouble again(ReadingEntry entry) {
    return MeasuredQuantity.ofText(entry.quantity())
        .map(quantity -> again(quantity, entry))
        .orElse(OptionalDouble.empty());
  }

  /** {@link #again} as the record asks for it. */
  public static DerivedNumber derived() {
    return ReadingValue::again;
  }

  private static OptionalDouble again(MeasuredQuantity quantity, ReadingEntry entry) {
    try {
      return OptionalDouble.of(si(quantity, entry.value(), entry.unit()));
    } catch (QuantityFormatException e) {
      return OptionalDouble.empty();
    }
  }

  private static double yesOrNo(String value, String unit) {
    String answer = value.strip();
    if (!unit.isBlank() || !(answer.equals("yes") || answer.equals("no"))) {
      throw new QuantityFormatException(
          "The answer to a question is '"
              + (value + " " + unit).strip()
              + "'; expected yes or no, without a unit.");
    }
    return answer.equals("yes") ? 1 : 0;
  }
}
