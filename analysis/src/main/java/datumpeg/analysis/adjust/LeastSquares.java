package datumpeg.analysis.adjust;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.decomposition.qr.QRColPivDecompositionHouseholderColumn_DDRM;

/**
 * Generalised linear least squares: the unknowns x that make v'Pv least, with v = A x - l and P the
 * inverse of the observations' full covariance.
 *
 * <p>Route: shared errors become unknowns observed as 0 ± 1 ({@link AugmentedSystem}); rows are
 * weighted and columns scaled to length 1. Well-conditioned systems are solved by the normal
 * equations, all others by a QR decomposition with column pivoting (G. H. Golub and C. F. Van Loan,
 * Matrix computations, 4.2, 5.3 and 5.4, recalled). The covariance of the result is not scaled by
 * the variance factor: the stated accuracy of the meter stands until the test rejects it.
 */
public final class LeastSquares {
  /**
   * Pivots of the scaled normal matrix from here up: orthogonality then keeps eleven digits (G. H.
   * Golub and C. F. Van Loan, 5.3.7, recalled: the error goes with the square of the condition).
   */
  private static final double WELL_CONDITIONED = 1e-4;

  private LeastSquares() {}

  /** Adjusts; never fails for want of observations, but says what stays undetermined. */
  public static Adjustment<Fit> adjust(LinearModel model) {
    AugmentedSystem system = AugmentedSystem.of(model);
    Optional<PositiveSystem> normal =
        PositiveSystem.of(system.normalMatrix())
            .filter(factored -> factored.smallestPivot() > WELL_CONDITIONED);
    if (normal.isPresent()) {
      return new Adjusted<>(ofNormal(model, system, normal.get().inverseRoot()));
    }
    return determined(model, system)
        ? new Adjusted<>(ofDecomposed(model, system))
        : undetermined(model, model.design());
  }

  /** By Cholesky factors of the normal equations: Q = A T, some tenth of the work. */
  private static Fit ofNormal(LinearModel model, AugmentedSystem system, DMatrixRMaj root) {
    return Fit.of(model, system, system.weightedTimes(new RootRows(root)), root);
  }

  private static Fit ofDecomposed(LinearModel model, AugmentedSystem system) {
    DMatrixRMaj weighted = system.weighted();
    double[] scales = scaleColumns(weighted);
    QRColPivDecompositionHouseholderColumn_DDRM qr = decomposed(weighted);
    return Fit.of(model, system, qr.getQ(null, true), rootOfCovariance(qr, scales));
  }

  /**
   * The unknowns only, for an iteration that is not at its end; empty if they are not determined.
   */
  static Optional<double[]> solve(LinearModel model) {
    AugmentedSystem system = AugmentedSystem.of(model);
    if (!determined(model, system)) {
      return Optional.empty();
    }
    Optional<double[]> quick =
        PositiveSystem.of(system.normalMatrix())
            .map(normal -> normal.solve(system.normalRight()))
            .map(solution -> Arrays.copyOf(solution, system.unknowns()));
    return quick.isPresent()
        ? quick
        : adjust(model)
            .complete()
            .map(Fit::parameters)
            .map(found -> model.unknowns().stream().mapToDouble(found::value).toArray());
  }

  /** Weights, however far apart, do not make an unknown undetermined: the design alone counts. */
  private static boolean determined(LinearModel model, AugmentedSystem system) {
    return system.observations() >= system.unknowns()
        && (PositiveSystem.of(system.unweightedNormalMatrix()).isPresent()
            || rank(model.design()) == system.unknowns());
  }

  private static QRColPivDecompositionHouseholderColumn_DDRM decomposed(DMatrixRMaj matrix) {
    QRColPivDecompositionHouseholderColumn_DDRM qr =
        new QRColPivDecompositionHouseholderColumn_DDRM();
    if (!qr.decompose(matrix)) {
      throw new ArithmeticException(
          "QR decomposition of a design " + matrix.numRows + "×" + matrix.numCols + " failed");
    }
    return qr;
  }

  private static double[] scaleColumns(DMatrixRMaj matrix) {
    double[] scales = new double[matrix.numCols];
    for (int j = 0; j < scales.length; j++) {
      double square = 0;
      for (int i = 0; i < matrix.numRows; i++) {
        square += matrix.get(i, j) * matrix.get(i, j);
      }
      scales[j] = square == 0 ? 1 : 1 / Math.sqrt(square);
      for (int i = 0; i < matrix.numRows; i++) {
        matrix.set(i, j, matrix.get(i, j) * scales[j]);
      }
    }
    return scales;
  }

  private static int rank(DMatrixRMaj scaled) {
    int u = scaled.numCols;
    scaleColumns(scaled);
    DMatrixRMaj triangle = decomposed(scaled).getR(null, true);
    double largest = Math.abs(triangle.get(0, 0));
    int rank = 0;
    while (rank < u && Math.abs(triangle.get(rank, rank)) > NullSpace.TOLERANCE * largest) {
      rank++;
    }
    return rank;
  }

  /** T = S P R^-1, so that the covariance of the unknowns is T T' and x = T Q'l. */
  private static DMatrixRMaj rootOfCovariance(
      QRColPivDecompositionHouseholderColumn_DDRM qr, double[] scales) {
    int size = scales.length;
    DMatrixRMaj inverse = new DMatrixRMaj(size, size);
    CommonOps_DDRM.invert(qr.getR(null, true), inverse);
    DMatrixRMaj root = new DMatrixRMaj(size, size);
    int[] pivots = qr.getColPivots();
    for (int k = 0; k < size; k++) {
      for (int j = 0; j < size; j++) {
        root.set(pivots[k], j, inverse.get(k, j) * scales[pivots[k]]);
      }
    }
    return root;
  }

  private static Adjustment<Fit> undetermined(LinearModel model, DMatrixRMaj design) {
    scaleColumns(design);
    NullSpace free = NullSpace.of(design);
    List<String> names = new ArrayList<>();
    for (int j = 0; j < design.numCols; j++) {
      if (free.moves(j)) {
        names.add(model.unknowns().get(j));
      }
    }
    return new Undetermined<>(
        names,
        design.numRows
            + " observations leave "
            + names.size()
            + " of "
            + design.numCols
            + " unknowns undetermined: "
            + String.join(", ", names),
        List.of(),
        Optional.empty());
  }
}
