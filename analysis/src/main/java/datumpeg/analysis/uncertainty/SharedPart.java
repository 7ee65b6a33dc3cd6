package datumpeg.analysis.uncertainty;

/**
 * Errors of one origin that several values answer to: the part R R' of their covariance. Immutable.
 */
final class SharedPart {
  private final Origin origin;
  private final double[][] root;

  /**
   * Takes over the array.
   *
   * @param root R, a row for each value, a column for each error of standard deviation 1
   */
  SharedPart(Origin origin, double[][] root) {
    this.origin = origin;
    this.root = root;
  }

  Origin origin() {
    return origin;
  }

  /** What it gives to the combination of values with these factors. */
  Budget budget(double[] factors) {
    int errors = root.length == 0 ? 0 : root[0].length;
    double[] answers = new double[errors];
    for (int i = 0; i < factors.length; i++) {
      if (factors[i] != 0) {
        for (int k = 0; k < errors; k++) {
          answers[k] += factors[i] * root[i][k];
        }
      }
    }
    double sum = 0;
    double squares = 0;
    for (double answer : answers) {
      double variance = answer * answer;
      sum += variance;
      squares += variance * variance;
    }
    return Budget.ofErrors(origin, sum, squares);
  }

  /** The same errors, as values that follow after some, or go before some, know them. */
  SharedPart among(int before, int after) {
    int errors = root.length == 0 ? 0 : root[0].length;
    double[][] rows = new double[before + root.length + after][];
    for (int i = 0; i < rows.length; i++) {
      boolean mine = i >= before && i < before + root.length;
      rows[i] = mine ? root[i - before] : new double[errors];
    }
    return new SharedPart(origin, rows);
  }
}
