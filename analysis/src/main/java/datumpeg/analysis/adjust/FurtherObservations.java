package datumpeg.analysis.adjust;

import datumpeg.analysis.uncertainty.Linearised;
import java.util.Arrays;
import java.util.Map;
import org.ejml.data.DMatrixRMaj;

/**
 * What further observations would do to a fit, whatever they read: one lowers the covariance of
 * everything by k k' (R. L. Plackett, Some theorems in least squares, 1950, recalled), with k its
 * covariance with the unknowns over the standard uncertainty of its misclosure. The joint
 * covariance of unknowns and shared errors is made once; each question then costs as much as the
 * few unknowns it names. Immutable.
 */
final class FurtherObservations {
  private final Fit fit;
  private final Map<String, Integer> positions;
  private final double[][] covariance;

  /**
   * @param root T, (u+g)×(u+g): T T' is the covariance of unknowns and shared errors
   */
  FurtherObservations(Fit fit, DMatrixRMaj root) {
    this.fit = fit;
    this.positions = fit.parameters().positions();
    this.covariance = new RootRows(root).covariance(root.numRows);
  }

  /** A linear form of unknowns and shared errors, and what it has besides. Immutable. */
  static final class Form {
    private final int[] rows;
    private final double[] factors;
    private final double own;

    /**
     * @param own variance of what it shares with nothing
     */
    private Form(int[] rows, double[] factors, double own) {
      this.rows = rows;
      this.factors = factors;
      this.own = own;
    }
  }

  /** A quantity of the unknowns; those not named by the fit are held and count nothing. */
  Form quantity(Map<String, Double> coefficients) {
    return form(coefficients, Map.of(), 0);
  }

  /** A quantity of the fit's parameters. */
  Form quantity(Linearised quantity) {
    return form(quantity, Map.of(), 0);
  }

  /** A further observation of a quantity of the fit's parameters. */
  Form observation(Linearised quantity, Observation accuracy) {
    return form(quantity, fit.sharedBy(accuracy), fit.ownVariance(accuracy));
  }

  private static Form form(Linearised quantity, Map<Integer, Double> shared, double own) {
    double[] sensitivities = quantity.sensitivities();
    int[] rows = new int[sensitivities.length + shared.size()];
    double[] factors = new double[rows.length];
    int count = 0;
    for (int row = 0; row < sensitivities.length; row++) {
      if (sensitivities[row] != 0) {
        rows[count] = row;
        factors[count++] = sensitivities[row];
      }
    }
    return form(rows, factors, count, shared, own);
  }

  /** A further observation, with what it shares with those taken. */
  Form observation(Map<String, Double> coefficients, Observation accuracy) {
    Map<Integer, Double> shared = fit.sharedBy(accuracy);
    return form(coefficients, shared, fit.ownVariance(accuracy));
  }

  /** The unknowns' part found so far, and the shared errors. */
  private static Form form(
      int[] rows, double[] factors, int unknowns, Map<Integer, Double> shared, double own) {
    int count = unknowns;
    for (Map.Entry<Integer, Double> entry : shared.entrySet()) {
      rows[count] = entry.getKey();
      factors[count++] = entry.getValue();
    }
    return new Form(Arrays.copyOf(rows, count), Arrays.copyOf(factors, count), own);
  }

  private Form form(Map<String, Double> coefficients, Map<Integer, Double> shared, double own) {
    int[] rows = new int[coefficients.size() + shared.size()];
    double[] factors = new double[rows.length];
    int count = 0;
    for (Map.Entry<String, Double> entry : coefficients.entrySet()) {
      int row = positions.getOrDefault(entry.getKey(), -1);
      rows[count] = Math.max(0, row);
      factors[count++] = row < 0 ? 0 : entry.getValue();
    }
    return form(rows, factors, count, shared, own);
  }

  /** Covariance of two forms, without what each has besides. */
  double covariance(Form one, Form other) {
    double sum = 0;
    for (int i = 0; i < one.rows.length; i++) {
      for (int j = 0; j < other.rows.length; j++) {
        sum += one.factors[i] * other.factors[j] * covariance[one.rows[i]][other.rows[j]];
      }
    }
    return sum;
  }

  /** The observation's variance before it is taken: of what is known of it, and its own. */
  double variance(Form observation) {
    return covariance(observation, observation) + observation.own;
  }

  /** a'k: by how much the observation lowers a quantity's variance, as a square root, signed. */
  double gain(Form quantity, Form observation) {
    return covariance(quantity, observation) / Math.sqrt(variance(observation));
  }
}
