package datumpeg.analysis.adjust;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.SingularValueDecomposition_F64;

/**
 * The directions in which the unknowns may move without any observation noticing: an orthonormal
 * basis, one vector of length u per missing rank.
 */
final class NullSpace {
  /**
   * Singular values below this share of the largest count as 0, and so do components of a unit
   * vector. Double precision leaves some 1e-14; a real network stays above 1e-5.
   */
  static final double TOLERANCE = 1e-8;

  private final List<double[]> basis;

  private NullSpace(List<double[]> basis) {
    this.basis = basis;
  }

  /** Null space of a design, n×u, whose columns are of like unit. */
  static NullSpace of(DMatrixRMaj design) {
    int u = design.numCols;
    if (design.numRows == 0) {
      return new NullSpace(identity(u));
    }
    SingularValueDecomposition_F64<DMatrixRMaj> svd =
        DecompositionFactory_DDRM.svd(design.numRows, u, false, true, false);
    if (!svd.decompose(design.copy())) {
      throw new ArithmeticException(
          "singular values of a design " + design.numRows + "×" + u + " not found");
    }
    double[] singular = svd.getSingularValues();
    DMatrixRMaj transposed = svd.getV(null, true);
    int values = svd.numberOfSingularValues();
    double largest = 0;
    for (int i = 0; i < values; i++) {
      largest = Math.max(largest, singular[i]);
    }
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < u; i++) {
      if (i >= values || singular[i] <= TOLERANCE * largest) {
        order.add(i);
      }
    }
    List<double[]> basis = new ArrayList<>();
    for (int i : order) {
      double[] vector = new double[u];
      System.arraycopy(transposed.data, i * u, vector, 0, u);
      basis.add(vector);
    }
    return new NullSpace(basis);
  }

  private static List<double[]> identity(int size) {
    List<double[]> basis = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      double[] vector = new double[size];
      vector[i] = 1;
      basis.add(vector);
    }
    return basis;
  }

  int dimension() {
    return basis.size();
  }

  /** Whether unknown number i may move unnoticed. */
  boolean moves(int unknown) {
    return basis.stream().anyMatch(vector -> Math.abs(vector[unknown]) > TOLERANCE);
  }

  /** How strongly a further observation with this gradient would see the unnoticed movements. */
  double seenBy(double[] gradient) {
    double sum = 0;
    for (double[] vector : basis) {
      double along = dot(vector, gradient);
      sum += along * along;
    }
    return Math.sqrt(sum);
  }

  /** What remains unnoticed after a further observation with this gradient. */
  NullSpace after(double[] gradient) {
    double seen = seenBy(gradient);
    if (seen <= TOLERANCE) {
      return this;
    }
    double[] direction = new double[gradient.length];
    for (double[] vector : basis) {
      add(direction, vector, dot(vector, gradient) / seen);
    }
    List<double[]> rest = new ArrayList<>(List.of(direction));
    for (double[] vector : basis) {
      double[] candidate = vector.clone();
      // Twice: one Gram-Schmidt pass loses orthogonality when little is left of the vector.
      for (int pass = 0; pass < 2; pass++) {
        rest.forEach(known -> add(candidate, known, -dot(known, candidate)));
      }
      double length = Math.sqrt(dot(candidate, candidate));
      if (length > TOLERANCE && rest.size() < basis.size()) {
        double[] unit = new double[candidate.length];
        add(unit, candidate, 1 / length);
        rest.add(unit);
      }
    }
    return new NullSpace(Collections.unmodifiableList(rest.subList(1, rest.size())));
  }

  private static void add(double[] to, double[] vector, double factor) {
    for (int i = 0; i < to.length; i++) {
      to[i] += factor * vector[i];
    }
  }

  private static double dot(double[] one, double[] other) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += one[i] * other[i];
    }
    return sum;
  }
}
