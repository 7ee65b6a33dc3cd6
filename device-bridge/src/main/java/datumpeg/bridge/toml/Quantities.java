package datumpeg.bridge.toml;

import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.analysis.quantity.QuantityFormatException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Reads values that are lengths or angles, written as texts with a unit. */
public final class Quantities {
  private Quantities() {}

  /** Metres; empty, and a mistake added, if it is not a length within the bound. */
  public static OptionalDouble length(Value value, Bound bound) {
    return read(value, Dimension.LENGTH, bound);
  }

  /** Radians; empty, and a mistake added, if it is not an angle within the bound. */
  public static OptionalDouble angle(Value value, Bound bound) {
    return read(value, Dimension.ANGLE, bound);
  }

  /** Metres; items that are no lengths within the bound are left out, a mistake added for each. */
  public static List<Double> lengths(Value value, Bound bound) {
    List<Double> metres = new ArrayList<>();
    for (Value item : value.list().orElse(List.of())) {
      length(item, bound).ifPresent(metres::add);
    }
    return metres;
  }

  private static OptionalDouble read(Value value, Dimension dimension, Bound bound) {
    String example = dimension == Dimension.LENGTH ? "\"150 mm\"" : "\"10 deg\"";
    if (!value.isText()) {
      value.mistake(
          "'"
              + value.name()
              + "' is "
              + value.describe()
              + "; expected a text with a unit, such as "
              + example
              + ".");
      return OptionalDouble.empty();
    }
    String text = value.text().orElse("");
    try {
      double number =
          dimension == Dimension.LENGTH ? Quantity.lengthMetres(text) : Quantity.angleRadians(text);
      if (bound.admits(number)) {
        return OptionalDouble.of(number);
      }
      value.mistake("'" + value.name() + "' is " + text + "; expected " + bound.words() + ".");
    } catch (QuantityFormatException e) {
      value.mistake("'" + value.name() + "': " + e.getMessage());
    }
    return OptionalDouble.empty();
  }
}
