package datumpeg.bridge.cli;

/**
 * A deviation between its limits as a line of text: {@code [ . . | . # . ]}. The brackets are the
 * limits less the uncertainty, so that a mark inside them is inside for sure. Immutable.
 *
 * @param limitMetres how far the deviation may go either way
 * @param uncertaintyMetres what one value may be off
 */
record LimitBar(double limitMetres, double uncertaintyMetres) {
  private static final int HALF = 10;
  private static final int OUTSIDE = 6;

  /** The limit less its uncertainty; zero or less where the meter cannot decide it. */
  double insideMetres() {
    return limitMetres - uncertaintyMetres;
  }

  boolean isInside(double deviationMetres) {
    return Math.abs(deviationMetres) <= insideMetres();
  }

  /** The bar with a mark at the deviation; beyond its ends the mark is an arrow. */
  String text(double deviationMetres) {
    int half = HALF + OUTSIDE;
    StringBuilder bar = new StringBuilder(" ".repeat(2 * half + 1));
    bar.replace(OUTSIDE, 2 * half + 1 - OUTSIDE, "-".repeat(2 * HALF + 1));
    bar.setCharAt(half, '|');
    bar.setCharAt(OUTSIDE - 1, '[');
    bar.setCharAt(2 * half + 1 - OUTSIDE, ']');
    double scale = insideMetres() > 0 ? HALF / insideMetres() : HALF / limitMetres;
    double place = deviationMetres * scale;
    if (Math.abs(place) > half) {
      bar.setCharAt(place < 0 ? 0 : 2 * half, place < 0 ? '<' : '>');
    } else {
      int mark = half + (int) Math.round(place);
      // Rounding must not draw inside what is outside.
      if (!isInside(deviationMetres) && Math.abs(mark - half) <= HALF) {
        mark = half + (deviationMetres < 0 ? -1 : 1) * (HALF + 1);
      }
      bar.setCharAt(mark, '#');
    }
    return bar.toString();
  }
}
