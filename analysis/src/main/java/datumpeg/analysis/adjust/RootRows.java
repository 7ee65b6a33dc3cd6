package datumpeg.analysis.adjust;

import org.ejml.data.DMatrixRMaj;

/**
 * Products of the rows of a matrix T: the elements of the covariance T T'. Where T is triangular,
 * as from the normal equations, what is 0 ahead of each row is passed over. Immutable.
 */
final class RootRows {
  private final DMatrixRMaj root;
  private final int[] starts;

  RootRows(DMatrixRMaj root) {
    this.root = root;
    this.starts = new int[root.numRows];
    for (int i = 0; i < starts.length; i++) {
      while (starts[i] < root.numCols && root.data[i * root.numCols + starts[i]] == 0) {
        starts[i]++;
      }
    }
  }

  /** Element i, j of T T'. */
  double product(int i, int j) {
    int from = i * root.numCols;
    int otherFrom = j * root.numCols;
    double sum = 0;
    for (int k = Math.max(starts[i], starts[j]); k < root.numCols; k++) {
      sum += root.data[from + k] * root.data[otherFrom + k];
    }
    return sum;
  }

  /** The first rows and columns of T T'. */
  double[][] covariance(int size) {
    double[][] rows = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j <= i; j++) {
        rows[i][j] = product(i, j);
        rows[j][i] = rows[i][j];
      }
    }
    return rows;
  }
}
