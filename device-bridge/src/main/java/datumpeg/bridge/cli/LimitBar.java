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
  private static final int MIDDLE = HALF + 6;

  /** The limit less its uncertainty; zero or less where the meter cannot decide it. */
  double insideMetres() {
    return limitMetres - uncertaintyMetres;
  }

  boolean isInside(double deviationMetres) {
    return Math.abs(deviationMetres) <= insideMetres();
  }

  /**
   * The bar with a mark at the deviation; beyond its ends the mark is an arrow. The brackets stand
   * close together where the uncertainty takes most of the limit, so that what is near is told from
   * what is far; where it takes all of it there are none.
   */
  String text(double deviationMetres) {
    double scale = HALF / Math.max(insideMetres(), limitMetres / 2);
    int inside = (int) Math.round(Math.max(insideMetres(), 0) * scale);
    StringBuilder bar = empty(inside);
    double place = deviationMetres * scale;
    if (Math.abs(place) > MIDDLE) {
      bar.setCharAt(place < 0 ? 0 : 2 * MIDDLE, place < 0 ? '<' : '>');
    } else {
      int mark = (int) Math.round(place);
      // Rounding must not draw inside what is outside.
      if (!isInside(deviationMetres) && insideMetres() > 0 && Math.abs(mark) <= inside) {
        mark = (deviationMetres < 0 ? -1 : 1) * (inside + 1);
      }
      bar.setCharAt(MIDDLE + mark, '#');
    }
    return bar.toString();
  }

  private StringBuilder empty(int inside) {
    StringBuilder bar = new StringBuilder(" ".repeat(2 * MIDDLE + 1));
    if (insideMetres() > 0) {
      bar.replace(MIDDLE - inside, MIDDLE + inside + 1, "-".repeat(2 * inside + 1));
      bar.setCharAt(MIDDLE - inside - 1, '[');
      bar.setCharAt(MIDDLE + inside + 1, ']');
    }
    bar.setCharAt(MIDDLE, '|');
    return bar;
  }
}
