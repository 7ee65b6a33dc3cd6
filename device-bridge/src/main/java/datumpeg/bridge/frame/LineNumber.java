package datumpeg.bridge.frame;

import java.util.OptionalDouble;

/** Reads the number of a token: digits with at most one decimal point or comma. */
final class LineNumber {
  /** A double holds 15 to 17 significant digits; no meter sends more than this. */
  private static final int MAXIMUM_DIGITS = 18;

  private LineNumber() {}

  /** The number, or nothing if it is not written as one ({@code 1,234.5}, {@code 12.}). */
  static OptionalDouble value(String text) {
    int digits = 0;
    int separators = 0;
    for (int index = 0; index < text.length(); index++) {
      boolean separator = text.charAt(index) == '.' || text.charAt(index) == ',';
      separators += separator ? 1 : 0;
      digits += separator ? 0 : 1;
    }
    char last = text.charAt(text.length() - 1);
    if (separators > 1 || digits > MAXIMUM_DIGITS || last == '.' || last == ',') {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(Double.parseDouble(text.replace(',', '.')));
  }

  static boolean isWhole(String text) {
    return text.indexOf('.') < 0 && text.indexOf(',') < 0 && text.length() <= MAXIMUM_DIGITS;
  }
}
