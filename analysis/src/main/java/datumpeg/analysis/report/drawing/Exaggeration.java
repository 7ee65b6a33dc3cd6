package datumpeg.analysis.report.drawing;

/**
 * How many times larger than the plan its deviations are drawn.
 *
 * @param factor a step of 1, 2, 5, 10 …
 */
record Exaggeration(double factor) {
  private static final double LARGEST = 1000;

  /**
   * The greatest step at which the largest deviation stays within the room there is; 1 if it is
   * larger than that even at true size, 1000 if there is next to no deviation.
   *
   * @param largestMetres the largest deviation to be drawn
   * @param roomMetres how long it may be drawn, in metres of the plan
   */
  static Exaggeration fitting(double largestMetres, double roomMetres) {
    if (largestMetres * LARGEST <= roomMetres) {
      return new Exaggeration(LARGEST);
    }
    return new Exaggeration(Math.max(1, RoundSteps.atMost(roomMetres / largestMetres)));
  }

  /** As told under the drawing, such as {@code 50 times}. */
  String text() {
    return (long) factor + " times";
  }
}
