package datumpeg.analysis.adjust;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ejml.data.DMatrixRMaj;

/**
 * What changing observed values does to v'Pv, in closed form and without adjusting again: with W =
 * P Qv P, v'Pv = l'W l, so that values changed by d give v'Pv + 2 d'W l + d'W d (W. Baarda, A
 * testing procedure for use in geodetic networks, 1968, recalled; a test holds it to adjusting
 * again). Exact for a linear model; for a linearised one as good as the place where it was
 * linearised. Immutable.
 *
 * <p>Changes are given by observation id, in the observation's unit; an id not named is unchanged.
 */
public final class ChangeEffects {
  private final Map<String, Integer> positions;
  private final DMatrixRMaj weights;
  private final double[] pulls;
  private final double squareSum;

  private ChangeEffects(
      Map<String, Integer> positions, DMatrixRMaj weights, double[] pulls, double squareSum) {
    this.positions = positions;
    this.weights = weights;
    this.pulls = pulls;
    this.squareSum = squareSum;
  }

  /**
   * @param slipWeights W = P Qv P
   * @param weightedResiduals P v
   */
  static ChangeEffects of(
      List<AdjustedObservation> observations,
      DMatrixRMaj slipWeights,
      double[] weightedResiduals,
      double squareSum) {
    Map<String, Integer> positions = new HashMap<>();
    double[] pulls = new double[observations.size()];
    for (int i = 0; i < pulls.length; i++) {
      positions.put(observations.get(i).observation().id(), i);
      pulls[i] = -weightedResiduals[i];
    }
    return new ChangeEffects(positions, slipWeights, pulls, squareSum);
  }

  /** v'Pv as it is. */
  public double squareSum() {
    return squareSum;
  }

  /** v'Pv after the change. */
  public double squareSum(Map<String, Double> change) {
    return Math.max(0, squareSum + 2 * pull(change) + product(change, change));
  }

  /** e'W l: half the slope of v'Pv along a direction. */
  public double pull(Map<String, Double> direction) {
    return pull(direction(direction));
  }

  /** e'W l, of a direction looked up before. */
  public double pull(Direction direction) {
    double sum = 0;
    for (int i = 0; i < direction.rows.length; i++) {
      sum += direction.values[i] * pulls[direction.rows[i]];
    }
    return sum;
  }

  /** a'W b: of a direction with itself, the inverse variance of a slip estimated along it. */
  public double product(Map<String, Double> one, Map<String, Double> other) {
    return product(direction(one), direction(other));
  }

  /** a'W b, of directions looked up before. */
  public double product(Direction one, Direction other) {
    double sum = 0;
    for (int i = 0; i < one.rows.length; i++) {
      for (int j = 0; j < other.rows.length; j++) {
        sum += one.values[i] * other.values[j] * weights.get(one.rows[i], other.rows[j]);
      }
    }
    return sum;
  }

  /** Looks a change up once, where it is used often. */
  public Direction direction(Map<String, Double> change) {
    int[] rows = new int[change.size()];
    double[] values = new double[change.size()];
    int i = 0;
    for (Map.Entry<String, Double> entry : change.entrySet()) {
      rows[i] = position(entry.getKey());
      values[i++] = entry.getValue();
    }
    return new Direction(rows, values);
  }

  /** A change of some observations, of this model's. Immutable. */
  public static final class Direction {
    private final int[] rows;
    private final double[] values;

    private Direction(int[] rows, double[] values) {
      this.rows = rows;
      this.values = values;
    }
  }

  /** The same model about changed values. */
  public ChangeEffects after(Map<String, Double> change) {
    double[] moved = pulls.clone();
    for (Map.Entry<String, Double> entry : change.entrySet()) {
      int column = position(entry.getKey());
      for (int row = 0; row < moved.length; row++) {
        moved[row] += weights.get(row, column) * entry.getValue();
      }
    }
    return new ChangeEffects(positions, weights, moved, squareSum(change));
  }

  private int position(String id) {
    Integer position = positions.get(id);
    if (position == null) {
      throw new IllegalArgumentException("change of values: there is no observation " + id);
    }
    return position;
  }
}
