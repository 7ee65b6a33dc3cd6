package datumpeg.analysis.adjust;

/**
 * Unknowns and residuals of a weighted system together, improved until rounding is left: f = b − r
 * − A x and g = −A'r are formed as if in twice the digits, and corrected by what is known of the
 * decomposition (Å. Björck, Iterative refinement of linear least squares solutions I, BIT 7, 1967,
 * recalled). What limits the result is then the observations as doubles, not how hard the system is
 * to solve.
 */
final class Refinement {
  private static final int MOST_PASSES = 6;

  /**
   * Each pass gains as many digits as the one before: after a correction this small none is left.
   */
  private static final double LAST = 1e-10;

  private final double[] solution;
  private final double[] residuals;

  private Refinement(double[] solution, double[] residuals) {
    this.solution = solution;
    this.residuals = residuals;
  }

  /**
   * Solves.
   *
   * @param orthogonal Q, (n+g)×(u+g), spans the weighted system
   * @param root T, (u+g)×(u+g): A T = Q
   */
  static Refinement of(AugmentedSystem system, RootRows orthogonal, RootRows root) {
    double[] solution = new double[orthogonal.width()];
    double[] rest = new double[orthogonal.height()];
    double whole = 0;
    double before = Double.POSITIVE_INFINITY;
    for (int pass = 0; pass < MOST_PASSES; pass++) {
      // The step is Q'f − T'g: the unknowns move by T times it, the residuals by f − Q times it.
      // Nothing is known at first, so that all is missing and nothing unbalanced.
      double[] missing = pass == 0 ? system.weightedReduced() : system.missing(solution, rest);
      double[] step = new double[solution.length];
      addTransposed(orthogonal, missing, step, 1);
      if (pass > 0) {
        addTransposed(root, system.unbalanced(rest), step, -1);
      }
      double size = greatest(step);
      if (!(size < before / 2)) {
        break;
      }
      addTimes(root, step, solution, 1);
      addTimes(orthogonal, step, missing, -1);
      for (int i = 0; i < rest.length; i++) {
        rest[i] += missing[i];
      }
      whole = Math.max(whole, size);
      if (size <= LAST * whole) {
        break;
      }
      before = size;
    }
    for (int i = 0; i < rest.length; i++) {
      rest[i] = -rest[i];
    }
    return new Refinement(solution, rest);
  }

  /** Unknowns, then shared errors. */
  double[] solution() {
    return solution;
  }

  /** Weighted, A x − b: one for each observation, then for each shared error. */
  double[] residuals() {
    return residuals;
  }

  private static double greatest(double[] vector) {
    double greatest = 0;
    for (double one : vector) {
      greatest = Math.max(greatest, Math.abs(one));
    }
    return greatest;
  }

  private static void addTransposed(RootRows matrix, double[] vector, double[] sum, double factor) {
    for (int i = 0; i < vector.length; i++) {
      if (vector[i] != 0) {
        matrix.addRow(i, factor * vector[i], sum, 0);
      }
    }
  }

  private static void addTimes(RootRows matrix, double[] vector, double[] sum, double factor) {
    for (int i = 0; i < sum.length; i++) {
      sum[i] += factor * matrix.product(i, vector);
    }
  }
}
