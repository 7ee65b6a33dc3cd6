package datumpeg.analysis.adjust;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.decomposition.TriangularSolver_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;

/**
 * Covariance Q of the observations: independent variances on the diagonal plus c c' for each shared
 * error, with its Cholesky factor L and the inverse of that.
 */
final class ObservationCovariance {
  private final List<String> groups;
  private final DMatrixRMaj effects;
  private final DMatrixRMaj factor;
  private final DMatrixRMaj inverseFactor;

  private ObservationCovariance(
      List<String> groups, DMatrixRMaj effects, DMatrixRMaj factor, DMatrixRMaj inverseFactor) {
    this.groups = groups;
    this.effects = effects;
    this.factor = factor;
    this.inverseFactor = inverseFactor;
  }

  static ObservationCovariance of(List<Observation> observations) {
    int n = observations.size();
    Set<String> names = new LinkedHashSet<>();
    observations.forEach(o -> o.commonParts().forEach(part -> names.add(part.group())));
    List<String> groups = new ArrayList<>(names);
    DMatrixRMaj effects = new DMatrixRMaj(n, groups.size());
    DMatrixRMaj covariance = new DMatrixRMaj(n, n);
    for (int i = 0; i < n; i++) {
      Observation observation = observations.get(i);
      double own = observation.independentStandardUncertainty();
      covariance.set(i, i, own * own);
      for (int g = 0; g < groups.size(); g++) {
        effects.set(i, g, observation.effect(groups.get(g)));
      }
    }
    if (n > 0 && !groups.isEmpty()) {
      CommonOps_DDRM.multAddTransB(effects, effects, covariance);
    }
    DMatrixRMaj factor = cholesky(covariance);
    DMatrixRMaj inverse = new DMatrixRMaj(n, n);
    TriangularSolver_DDRM.invertLower(factor.data, inverse.data, n);
    return new ObservationCovariance(groups, effects, factor, inverse);
  }

  private static DMatrixRMaj cholesky(DMatrixRMaj covariance) {
    if (covariance.numRows == 0) {
      return covariance;
    }
    CholeskyDecomposition_F64<DMatrixRMaj> cholesky =
        DecompositionFactory_DDRM.chol(covariance.numRows, true);
    if (!cholesky.decompose(covariance.copy())) {
      throw new IllegalArgumentException(
          "covariance of "
              + covariance.numRows
              + " observations: an independent part is too small beside its common parts (ratio under"
              + " about 1e-8), expected independent parts that matter");
    }
    return cholesky.getT(null);
  }

  /** L^-1 M. */
  DMatrixRMaj whitened(DMatrixRMaj matrix) {
    return product(inverseFactor, matrix);
  }

  /** L. */
  DMatrixRMaj factor() {
    return factor;
  }

  /** L^-1. */
  DMatrixRMaj inverseFactor() {
    return inverseFactor;
  }

  /** Names of the shared errors. */
  List<String> groups() {
    return groups;
  }

  /** Effect of each shared error on each observation, n×g. */
  DMatrixRMaj effects() {
    return effects;
  }

  static DMatrixRMaj product(DMatrixRMaj left, DMatrixRMaj right) {
    DMatrixRMaj result = new DMatrixRMaj(left.numRows, right.numCols);
    if (left.numCols > 0) {
      CommonOps_DDRM.mult(left, right, result);
    }
    return result;
  }

  /** A B'. */
  static DMatrixRMaj productTransposed(DMatrixRMaj left, DMatrixRMaj right) {
    DMatrixRMaj result = new DMatrixRMaj(left.numRows, right.numRows);
    if (left.numCols > 0) {
      CommonOps_DDRM.multTransB(left, right, result);
    }
    return result;
  }

  /** A' B. */
  static DMatrixRMaj transposedProduct(DMatrixRMaj left, DMatrixRMaj right) {
    DMatrixRMaj result = new DMatrixRMaj(left.numCols, right.numCols);
    if (left.numRows > 0) {
      CommonOps_DDRM.multTransA(left, right, result);
    }
    return result;
  }
}
