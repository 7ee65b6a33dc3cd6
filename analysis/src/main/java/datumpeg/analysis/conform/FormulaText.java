package datumpeg.analysis.conform;

import java.util.Locale;

/**
 * Reads a formula in one size by recursive descent, and reckons it as it goes.
 *
 * <p>sum = product { (+ | -) product }, product = factor { (* | /) factor }, factor = number | L |
 * - factor | ( sum ) | sqrt ( sum ) | min ( sum , sum … ) | max ( sum , sum … ).
 */
final class FormulaText {
  private final String text;
  private final double size;
  private int at;

  private FormulaText(String text, double size) {
    this.text = text;
    this.size = size;
  }

  /**
   * The formula's value with L set to the size.
   *
   * @throws IllegalArgumentException saying where the text stops to be a formula
   */
  static double value(String text, double size) {
    FormulaText formula = new FormulaText(text, size);
    double value = formula.sum();
    if (formula.next() != 0) {
      throw formula.unexpected("+, -, *, / or the end");
    }
    return value;
  }

  private double sum() {
    double value = product();
    while (true) {
      if (take('+')) {
        value += product();
      } else if (take('-')) {
        value -= product();
      } else {
        return value;
      }
    }
  }

  private double product() {
    double value = factor();
    while (true) {
      if (take('*')) {
        value *= factor();
      } else if (take('/')) {
        value /= factor();
      } else {
        return value;
      }
    }
  }

  private double factor() {
    if (take('-')) {
      return -factor();
    }
    if (take('(')) {
      double value = sum();
      expect(')');
      return value;
    }
    if (Character.isDigit(next())) {
      return number();
    }
    int start = at;
    String word = word();
    return switch (word) {
      case "L" -> size;
      case "sqrt" -> {
        expect('(');
        double value = sum();
        expect(')');
        yield Math.sqrt(value);
      }
      case "min", "max" -> extreme(word.equals("min"));
      default -> {
        at = start;
        throw unexpected("a number, L, sqrt(…), min(…, …), max(…, …) or a bracket");
      }
    };
  }

  private double extreme(boolean least) {
    expect('(');
    double value = sum();
    while (take(',')) {
      double other = sum();
      value = least ? Math.min(value, other) : Math.max(value, other);
    }
    expect(')');
    return value;
  }

  private double number() {
    int start = at;
    while (at < text.length() && (Character.isDigit(text.charAt(at)) || text.charAt(at) == '.')) {
      at++;
    }
    try {
      return Double.parseDouble(text.substring(start, at));
    } catch (NumberFormatException e) {
      at = start;
      throw unexpected("a number such as 0.25");
    }
  }

  private String word() {
    int start = at;
    while (at < text.length() && Character.isLetter(text.charAt(at))) {
      at++;
    }
    return text.substring(start, at);
  }

  /** The next character that is not blank; 0 at the end. */
  private char next() {
    while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
      at++;
    }
    return at < text.length() ? text.charAt(at) : 0;
  }

  private boolean take(char wanted) {
    if (next() != wanted) {
      return false;
    }
    at++;
    return true;
  }

  private void expect(char wanted) {
    if (!take(wanted)) {
      throw unexpected("'" + wanted + "'");
    }
  }

  private IllegalArgumentException unexpected(String expected) {
    char found = next();
    return new IllegalArgumentException(
        String.format(
            Locale.ROOT,
            "The formula \"%s\" has %s at its character %d; expected %s.",
            text,
            found == 0 ? "its end" : "'" + found + "'",
            at + 1,
            expected));
  }
}
