package datumpeg.analysis.adjust;

import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * Equations with a symmetric positive matrix, scaled to a diagonal of 1 and factored after Cholesky
 * (G. H. Golub and C. F. Van Loan, Matrix computations, 4.2, recalled). Pivots near 0 mean that the
 * matrix says little of some unknown.
 */
final class PositiveSystem {
  /**
   * Pivots from here up leave at least half the digits of a double: the unknowns are determined,
   * and a Newton step from such a system is as good as an exact one.
   */
  private static final double SAFE_PIVOT = 1e-8;

  private final double[] scales;
  private final double[] factor;

  /**
   * @param factor U = L', row by row
   */
  private PositiveSystem(double[] scales, double[] factor) {
    this.scales = scales;
    this.factor = factor;
  }

  /** Factors; empty if a pivot is too small to be relied on. */
  static Optional<PositiveSystem> of(DMatrixRMaj matrix) {
    int size = matrix.numRows;
    double[] scales = new double[size];
    for (int i = 0; i < size; i++) {
      double diagonal = matrix.get(i, i);
      if (!(diagonal > 0)) {
        return Optional.empty();
      }
      scales[i] = 1 / Math.sqrt(diagonal);
    }
    // Upper triangle, row by row: each row, once done, is taken from those below it as a whole.
    double[] factor = new double[size * size];
    for (int i = 0; i < size; i++) {
      for (int j = i; j < size; j++) {
        factor[i * size + j] = matrix.get(i, j) * scales[i] * scales[j];
      }
    }
    for (int k = 0; k < size; k++) {
      double pivot = factor[k * size + k];
      if (!(pivot > SAFE_PIVOT)) {
        return Optional.empty();
      }
      double root = Math.sqrt(pivot);
      for (int j = k; j < size; j++) {
        factor[k * size + j] /= root;
      }
      for (int i = k + 1; i < size; i++) {
        if (factor[k * size + i] != 0) {
          subtract(factor, k * size, i * size, factor[k * size + i], i, size);
        }
      }
    }
    return Optional.of(new PositiveSystem(scales, factor));
  }

  /** From one row of a matrix, another times a factor, from some column on. */
  private static void subtract(
      double[] matrix, int row, int from, double times, int start, int end) {
    for (int j = start; j < end; j++) {
      matrix[from + j] -= times * matrix[row + j];
    }
  }

  /**
   * The smallest pivot of the scaled matrix: what is left of an unknown when the others are known.
   */
  double smallestPivot() {
    int size = scales.length;
    double smallest = 1;
    for (int i = 0; i < size; i++) {
      smallest = Math.min(smallest, factor[i * size + i] * factor[i * size + i]);
    }
    return smallest;
  }

  /** T with T T' the inverse of the matrix: S U^-1, upper triangular. */
  DMatrixRMaj inverseRoot() {
    int size = scales.length;
    DMatrixRMaj root = new DMatrixRMaj(size, size);
    double[] inverse = root.data;
    for (int i = size - 1; i >= 0; i--) {
      inverse[i * size + i] = 1;
      for (int k = i + 1; k < size; k++) {
        if (factor[i * size + k] != 0) {
          subtract(inverse, k * size, i * size, factor[i * size + k], k, size);
        }
      }
      double share = 1 / factor[i * size + i];
      for (int j = i; j < size; j++) {
        inverse[i * size + j] *= share;
      }
    }
    CommonOps_DDRM.multRows(scales, root);
    return root;
  }

  double[] solve(double[] right) {
    int size = scales.length;
    double[] solution = new double[size];
    for (int i = 0; i < size; i++) {
      solution[i] = right[i] * scales[i];
    }
    for (int i = 0; i < size; i++) {
      solution[i] /= factor[i * size + i];
      for (int k = i + 1; k < size; k++) {
        solution[k] -= factor[i * size + k] * solution[i];
      }
    }
    for (int i = size - 1; i >= 0; i--) {
      double sum = solution[i];
      for (int k = i + 1; k < size; k++) {
        sum -= factor[i * size + k] * solution[k];
      }
      solution[i] = sum / factor[i * size + i];
    }
    for (int i = 0; i < size; i++) {
      solution[i] *= scales[i];
    }
    return solution;
  }
}
