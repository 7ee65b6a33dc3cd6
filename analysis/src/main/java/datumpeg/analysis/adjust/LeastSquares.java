package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.ObservationCovariance.product;
import static datumpeg.analysis.adjust.ObservationCovariance.productTransposed;
import static datumpeg.analysis.adjust.ObservationCovariance.transposedProduct;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.decomposition.qr.QRColPivDecompositionHouseholderColumn_DDRM;

/**
 * Generalised linear least squares: the unknowns x that make v'Pv least, with v = A x - l and P the
 * inverse of the observations' full covariance.
 *
 * <p>Route: the covariance's Cholesky factor whitens A and l; columns are scaled to length 1; a QR
 * decomposition with column pivoting shows the rank and solves (G. H. Golub and C. F. Van Loan,
 * Matrix computations, 5.3 and 5.4, recalled). The covariance of the result is not scaled by the
 * variance factor: the stated accuracy of the meter stands until the test rejects it.
 */
public final class LeastSquares {
  private LeastSquares() {}

  /** Adjusts; never fails for want of observations, but says what stays undetermined. */
  public static Adjustment<Fit> adjust(LinearModel model) {
    DMatrixRMaj design = model.design();
    int u = design.numCols;
    if (u > 0 && rank(design) < u) {
      return undetermined(model, design);
    }
    ObservationCovariance covariance = ObservationCovariance.of(model.observations());
    DMatrixRMaj orthogonal = new DMatrixRMaj(design.numRows, u);
    DMatrixRMaj root = new DMatrixRMaj(u, u);
    if (u > 0) {
      DMatrixRMaj whitened = covariance.whitened(design);
      double[] scales = scaleColumns(whitened);
      QRColPivDecompositionHouseholderColumn_DDRM qr = decomposed(whitened);
      orthogonal = qr.getQ(null, true);
      root = rootOfCovariance(qr, scales);
    }
    DMatrixRMaj reduced = covariance.whitened(model.reducedObservations());
    DMatrixRMaj fitted = transposedProduct(orthogonal, reduced);
    DMatrixRMaj residuals = product(orthogonal, fitted);
    CommonOps_DDRM.subtractEquals(residuals, reduced);
    return new Adjusted<>(
        Fit.of(
            model,
            covariance,
            product(root, fitted),
            productTransposed(root, root),
            orthogonal,
            residuals));
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

  /** Rank of the design itself: weights, however far apart, do not make an unknown undetermined. */
  private static int rank(DMatrixRMaj design) {
    int u = design.numCols;
    if (design.numRows < u) {
      return 0;
    }
    DMatrixRMaj scaled = design.copy();
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
    int u = scales.length;
    DMatrixRMaj inverse = new DMatrixRMaj(u, u);
    CommonOps_DDRM.invert(qr.getR(null, true), inverse);
    DMatrixRMaj root = new DMatrixRMaj(u, u);
    int[] pivots = qr.getColPivots();
    for (int k = 0; k < u; k++) {
      for (int j = 0; j < u; j++) {
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
