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

  /** Number of rows. */
  int height() {
    return root.numRows;
  }

  /** Length of a row. */
  int width() {
    return root.numCols;
  }

  /** Element i, j of T T'. */
  double product(int i, int j) {
    return product(i, this, j);
  }

  /** Row i times row j of another matrix of the same width. */
  double product(int i, RootRows other, int j) {
    int start = Math.max(starts[i], other.starts[j]);
    return product(
        root.data,
        i * root.numCols + start,
        other.root.data,
        j * root.numCols + start,
        root.numCols - start);
  }

  /** Four sums side by side, as each addition waits for the one before it. */
  private static double product(double[] one, int at, double[] other, int otherAt, int length) {
    double first = 0;
    double second = 0;
    double third = 0;
    double fourth = 0;
    int k = 0;
    for (; k + 3 < length; k += 4) {
      first += one[at + k] * other[otherAt + k];
      second += one[at + k + 1] * other[otherAt + k + 1];
      third += one[at + k + 2] * other[otherAt + k + 2];
      fourth += one[at + k + 3] * other[otherAt + k + 3];
    }
    for (; k < length; k++) {
      first += one[at + k] * other[otherAt + k];
    }
    return first + second + (third + fourth);
  }

  /** Row i times a vector. */
  double product(int i, double[] vector) {
    int start = starts[i];
    return product(root.data, i * root.numCols + start, vector, start, root.numCols - start);
  }

  /** Adds a row times a factor to what begins at a place of an array. */
  void addRow(int i, double factor, double[] sum, int at) {
    int from = i * root.numCols;
    for (int k = starts[i]; k < root.numCols; k++) {
      sum[at + k] += factor * root.data[from + k];
    }
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
