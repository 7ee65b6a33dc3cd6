package datumpeg.analysis.adjust;

import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.decomposition.TriangularSolver_DDRM;

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
    double[] factor = new double[size * size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = matrix.get(i, j) * scales[i] * scales[j];
        for (int k = 0; k < j; k++) {
          sum -= factor[i * size + k] * factor[j * size + k];
        }
        if (i == j && !(sum > SAFE_PIVOT)) {
          return Optional.empty();
        }
        factor[i * size + j] = i == j ? Math.sqrt(sum) : sum / factor[j * size + j];
      }
    }
    return Optional.of(new PositiveSystem(scales, factor));
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

  /** T with T T' the inverse of the matrix: S L'^-1, upper triangular. */
  DMatrixRMaj inverseRoot() {
    int size = scales.length;
    DMatrixRMaj root = new DMatrixRMaj(size, size, true, factor);
    TriangularSolver_DDRM.invertLower(root.data, size);
    CommonOps_DDRM.transpose(root);
    CommonOps_DDRM.multRows(scales, root);
    return root;
  }

  double[] solve(double[] right) {
    int size = scales.length;
    double[] solution = new double[size];
    for (int i = 0; i < size; i++) {
      double sum = right[i] * scales[i];
      for (int k = 0; k < i; k++) {
        sum -= factor[i * size + k] * solution[k];
      }
      solution[i] = sum / factor[i * size + i];
    }
    for (int i = size - 1; i >= 0; i--) {
      double sum = solution[i];
      for (int k = i + 1; k < size; k++) {
        sum -= factor[k * size + i] * solution[k];
      }
      solution[i] = sum / factor[i * size + i];
    }
    for (int i = 0; i < size; i++) {
      solution[i] *= scales[i];
    }
    return solution;
  }
}
