package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

final class PositiveSystemTest {

  /** A' A of random rows whose columns differ in size by powers of ten. */
  private static RealMatrix normal(SplittableRandom random, int size) {
    RealMatrix rows = MatrixUtils.createRealMatrix(size + 5, size);
    for (int i = 0; i < size + 5; i++) {
      for (int j = 0; j < size; j++) {
        rows.setEntry(i, j, StrictMath.pow(10, j % 4) * random.nextDouble(-1, 1));
      }
    }
    return rows.transposeMultiply(rows);
  }

  private static PositiveSystem system(RealMatrix matrix) {
    return PositiveSystem.of(new DMatrixRMaj(matrix.getData())).orElseThrow();
  }

  private static RealMatrix toHipparchus(DMatrixRMaj matrix) {
    RealMatrix copy = MatrixUtils.createRealMatrix(matrix.numRows, matrix.numCols);
    for (int i = 0; i < matrix.numRows; i++) {
      for (int j = 0; j < matrix.numCols; j++) {
        copy.setEntry(i, j, matrix.get(i, j));
      }
    }
    return copy;
  }

  /** Second route: the inverse by LU decomposition, and Cholesky's own, both of Hipparchus. */
  @Test
  void theRootSquaredIsTheInverseAnotherLibraryFinds() {
    SplittableRandom random = new SplittableRandom(3);
    for (int size = 1; size <= 12; size++) {
      RealMatrix matrix = normal(random, size);
      RealMatrix root = toHipparchus(system(matrix).inverseRoot());
      RealMatrix inverse = root.multiplyTransposed(root);
      RealMatrix byLu = new LUDecomposition(matrix).getSolver().getInverse();
      RealMatrix byCholesky = new CholeskyDecomposition(matrix).getSolver().getInverse();
      for (int i = 0; i < size; i++) {
        for (int j = 0; j < size; j++) {
          double scale = Math.sqrt(byLu.getEntry(i, i) * byLu.getEntry(j, j));
          assertEquals(byLu.getEntry(i, j), inverse.getEntry(i, j), 1e-9 * scale);
          assertEquals(byCholesky.getEntry(i, j), inverse.getEntry(i, j), 1e-9 * scale);
        }
      }
    }
  }

  /** A 2x2 matrix with correlation r has the pivots 1 and 1 - r² once scaled (by hand). */
  @Test
  void theSmallestPivotIsWhatTheOtherUnknownLeaves() {
    RealMatrix matrix = MatrixUtils.createRealMatrix(new double[][] {{4, 5.4}, {5.4, 9}});
    assertEquals(1 - 0.9 * 0.9, system(matrix).smallestPivot(), 1e-12);
  }

  @Test
  void theRootMayBeTakenTwiceAndLeavesTheSystemAsItWas() {
    RealMatrix matrix = normal(new SplittableRandom(5), 4);
    PositiveSystem system = system(matrix);
    double[] right = {1, 2, 3, 4};
    double[] before = system.solve(right);
    DMatrixRMaj once = system.inverseRoot();
    assertEquals(0, distance(once, system.inverseRoot()));
    double[] after = system.solve(right);
    for (int i = 0; i < right.length; i++) {
      assertEquals(before[i], after[i]);
    }
  }

  private static double distance(DMatrixRMaj one, DMatrixRMaj other) {
    return toHipparchus(one).subtract(toHipparchus(other)).getFrobeniusNorm();
  }

  @Test
  void aMatrixThatSaysNothingOfAnUnknownIsRefused() {
    assertTrue(PositiveSystem.of(new DMatrixRMaj(new double[][] {{1, 1}, {1, 1}})).isEmpty());
    assertTrue(PositiveSystem.of(new DMatrixRMaj(new double[][] {{1, 0}, {0, 0}})).isEmpty());
    assertTrue(PositiveSystem.of(new DMatrixRMaj(new double[][] {{Double.NaN}})).isEmpty());
    assertTrue(PositiveSystem.of(new DMatrixRMaj(0, 0)).isPresent());
  }
}
