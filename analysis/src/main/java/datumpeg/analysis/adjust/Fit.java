package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.ObservationCovariance.product;
import static datumpeg.analysis.adjust.ObservationCovariance.productTransposed;
import static datumpeg.analysis.adjust.ObservationCovariance.transposedProduct;

import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.JointEstimate;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * A least-squares solution: unknowns, residuals, and how well each observation is checked.
 * Immutable.
 */
public final class Fit {
  private final JointEstimate parameters;
  private final List<AdjustedObservation> observations;
  private final int degreesOfFreedom;
  private final double squareSum;
  private final ResidualStatistics statistics;
  private final ObservationCovariance covariance;

  private Fit(
      JointEstimate parameters,
      int degreesOfFreedom,
      double squareSum,
      ResidualStatistics statistics,
      ObservationCovariance covariance) {
    this.parameters = parameters;
    this.observations = statistics.observations();
    this.degreesOfFreedom = degreesOfFreedom;
    this.squareSum = squareSum;
    this.statistics = statistics;
    this.covariance = covariance;
  }

  /**
   * Assembles a solution.
   *
   * @param orthogonal n×u, spans the whitened design
   * @param whitenedResiduals n×1
   */
  static Fit of(
      LinearModel model,
      ObservationCovariance covariance,
      DMatrixRMaj unknowns,
      DMatrixRMaj unknownsCovariance,
      DMatrixRMaj orthogonal,
      DMatrixRMaj whitenedResiduals) {
    int n = orthogonal.numRows;
    DMatrixRMaj projector = CommonOps_DDRM.identity(n);
    CommonOps_DDRM.subtractEquals(projector, productTransposed(orthogonal, orthogonal));
    DMatrixRMaj inverse = covariance.inverseFactor();
    ResidualStatistics statistics =
        ResidualStatistics.of(
            model.observations(),
            product(covariance.factor(), whitenedResiduals),
            product(product(covariance.factor(), projector), transposed(covariance.factor())),
            transposedProduct(inverse, whitenedResiduals),
            product(transposedProduct(inverse, projector), inverse),
            transposedProduct(inverse, inverse));
    double squareSum = transposedProduct(whitenedResiduals, whitenedResiduals).get(0, 0);
    return new Fit(
        JointEstimate.of(model.unknowns(), unknowns.data.clone(), rows(unknownsCovariance)),
        n - orthogonal.numCols,
        squareSum,
        statistics,
        covariance);
  }

  /** The same fit, its unknowns given as values instead of corrections to approximate values. */
  Fit withValues(double[] values) {
    List<String> names = parameters.names();
    double[][] matrix = new double[values.length][values.length];
    for (int i = 0; i < values.length; i++) {
      for (int j = 0; j < values.length; j++) {
        matrix[i][j] = parameters.covariance(names.get(i), names.get(j));
      }
    }
    return new Fit(
        JointEstimate.of(names, values, matrix),
        degreesOfFreedom,
        squareSum,
        statistics,
        covariance);
  }

  private static DMatrixRMaj transposed(DMatrixRMaj matrix) {
    return CommonOps_DDRM.transpose(matrix, null);
  }

  private static double[][] rows(DMatrixRMaj matrix) {
    double[][] rows = new double[matrix.numRows][matrix.numCols];
    for (int i = 0; i < rows.length; i++) {
      System.arraycopy(matrix.data, i * matrix.numCols, rows[i], 0, matrix.numCols);
    }
    return rows;
  }

  /**
   * The unknowns with their covariance, from the stated accuracy, not scaled by the variance
   * factor.
   */
  public JointEstimate parameters() {
    return parameters;
  }

  /** The observations in the order given. */
  public List<AdjustedObservation> observations() {
    return observations;
  }

  /** One observation. */
  public AdjustedObservation observation(String id) {
    return observations.get(statistics.position(id));
  }

  /** Observations less unknowns. */
  public int degreesOfFreedom() {
    return degreesOfFreedom;
  }

  /** The test of all observations together; absent without redundancy. */
  public Optional<GlobalTest> test() {
    return degreesOfFreedom == 0
        ? Optional.empty()
        : Optional.of(new GlobalTest(squareSum, degreesOfFreedom));
  }

  /** Covariance of two residuals. */
  public double residualCovariance(String firstId, String secondId) {
    return statistics.residualCovariance(firstId, secondId);
  }

  /** What changes of the observed values would do to the square sum. */
  public ChangeEffects changeEffects() {
    return statistics.changeEffects(squareSum);
  }

  /** A slip the observations show at the given significance, for example 0.05. */
  public Optional<SuspectedSlip> suspectedSlip(double significance) {
    return statistics.suspectedSlip(significance);
  }

  /**
   * What the observations say of a shared error, in its standard deviations: the best linear
   * prediction c'P(l - A x) with its error variance 1 - c'P Qv P c (C. R. Rao, Linear statistical
   * inference, 4a.11, recalled). Value 0 and uncertainty 1 mean they say nothing.
   *
   * @throws IllegalArgumentException if no observation names the group
   */
  public Estimate commonEffect(String group) {
    int g = covariance.groups().indexOf(group);
    if (g < 0) {
      throw new IllegalArgumentException(
          "shared error: no observation names " + group + "; named are " + covariance.groups());
    }
    return statistics.predicted(CommonOps_DDRM.extractColumn(covariance.effects(), g, null));
  }
}
