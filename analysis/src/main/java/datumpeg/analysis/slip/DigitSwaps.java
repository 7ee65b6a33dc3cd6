package datumpeg.analysis.slip;

import datumpeg.analysis.measuring.WrittenValue;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.analysis.quantity.QuantityFormatException;
import datumpeg.analysis.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A written value with two neighbouring digits in each other's place. */
final class DigitSwaps {
  private static final Pattern NUMBER = Pattern.compile("\\d+(?:[.,]\\d+)?");
  private static final Pattern ODD_START = Pattern.compile("(?<![\\d.,])0\\d");
  private static final Pattern INCHES =
      Pattern.compile("(?<![\\d/.])(\\d+)(?:\\.\\d+)?(?:\\s+\\d+/\\d+)?\\s*(?:in|\"|″)?$");

  private DigitSwaps() {}

  /** As it was written; if nobody knows, in metres to the millimetre or degrees to a thousandth. */
  static WrittenValue written(SlipReading reading) {
    return reading
        .written()
        .orElseGet(
            () ->
                reading.isTilt()
                    ? new WrittenValue(
                        LengthDisplay.decimal(StrictMath.toDegrees(reading.value()), 3), "deg")
                    : new WrittenValue(LengthDisplay.decimal(reading.value(), 3), "m"));
  }

  /**
   * Each value that comes of transposing two neighbouring, different digits of one number, with or
   * without a decimal point between them. What could not have been written is left out: a number
   * that starts with 0, twelve or more inches beside feet, a fraction above 1.
   */
  static List<WrittenValue> of(WrittenValue written) {
    List<WrittenValue> swapped = new ArrayList<>();
    Matcher number = NUMBER.matcher(written.value());
    while (number.find()) {
      for (int i = number.start(); i < number.end() - 1; i++) {
        int next = Character.isDigit(written.value().charAt(i + 1)) ? i + 1 : i + 2;
        if (Character.isDigit(written.value().charAt(i)) && next < number.end()) {
          String value = swapped(written.value(), i, next);
          if (!value.equals(written.value()) && couldBeWritten(value, written)) {
            swapped.add(new WrittenValue(value, written.unit()));
          }
        }
      }
    }
    return swapped;
  }

  private static String swapped(String text, int one, int other) {
    StringBuilder swapped = new StringBuilder(text);
    swapped.setCharAt(one, text.charAt(other));
    swapped.setCharAt(other, text.charAt(one));
    return swapped.toString();
  }

  private static boolean couldBeWritten(String value, WrittenValue written) {
    if (ODD_START.matcher(value).find() && !ODD_START.matcher(written.value()).find()) {
      return false;
    }
    boolean withFeet =
        Unit.FOOT_AND_INCH.symbol().equals(written.unit())
            || (written.unit().isBlank() && written.value().matches(".*(?:ft|'|′).*\\d.*"));
    if (withFeet) {
      Matcher inches = INCHES.matcher(value.strip());
      return !inches.find() || Integer.parseInt(inches.group(1)) < 12;
    }
    return true;
  }

  /** What a text comes to in metres or radians; empty if it is no value. */
  static OptionalDouble value(WrittenValue written) {
    try {
      return OptionalDouble.of(Quantity.parse(written.value(), written.unit()).siValue());
    } catch (QuantityFormatException e) {
      return OptionalDouble.empty();
    }
  }
}
