package datumpeg.bridge.frame;

import datumpeg.analysis.quantity.Unit;

/**
 * Where the parts of a plain line stand, counted from its beginning.
 *
 * @param first the first digit: behind the sign, if there is one
 * @param mark the decimal mark; −1 without one
 * @param textEnd behind the last digit
 * @param lineEnd behind the unit
 * @param next behind the terminator, where the next line begins; {@code lineEnd} without one
 * @param unit of the number
 */
record PlainShape(int first, int mark, int textEnd, int lineEnd, int next, Unit unit) {
  int digitCount() {
    return textEnd - first - (mark < 0 ? 0 : 1);
  }

  int decimals() {
    return mark < 0 ? 0 : textEnd - 1 - mark;
  }

  boolean isTerminated() {
    return next > lineEnd;
  }
}
