package datumpeg.analysis.uncertainty;

import java.util.List;

/**
 * A quantity computed from the values of one {@link JointEstimate}: its value and its gradient with
 * respect to them, carried through each operation by the chain rule. Two such quantities of the
 * same joint estimate know their correlation, so a difference of two distances of one network is as
 * certain as it really is. First-order propagation: JCGM 100:2008, 5.2.2 eq. (13). Immutable.
 */
public final class Linearised {
  private final JointEstimate inputs;
  private final double value;
  private final double[] gradient;

  Linearised(JointEstimate inputs, double value, double[] gradient) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(
          "propagation: a value became " + value + ", expected a finite number");
    }
    this.inputs = inputs;
    this.value = value;
    this.gradient = gradient;
  }

  /** Mean of at least one quantity. */
  public static Linearised mean(List<Linearised> quantities) {
    if (quantities.isEmpty()) {
      throw new IllegalArgumentException("mean of quantities: none given, expected at least one");
    }
    Linearised first = quantities.get(0);
    double share = 1.0 / quantities.size();
    double value = 0;
    double[] gradient = new double[first.gradient.length];
    for (Linearised one : quantities) {
      first.requireSame(one);
      value += one.value;
      for (int i = 0; i < gradient.length; i++) {
        gradient[i] += share * one.gradient[i];
      }
    }
    return new Linearised(first.inputs, share * value, gradient);
  }

  /**
   * Angle of the direction (x, y) from the x axis, in (-pi, pi].
   *
   * @throws IllegalArgumentException if both are 0
   */
  public static Linearised direction(Linearised y, Linearised x) {
    double square = x.value * x.value + y.value * y.value;
    if (square == 0) {
      throw new IllegalArgumentException(
          "direction: both components are 0, expected two distinct points");
    }
    return y.combined(x, StrictMath.atan2(y.value, x.value), x.value / square, -y.value / square);
  }

  /** Sum. */
  public Linearised plus(Linearised other) {
    return combined(other, value + other.value, 1, 1);
  }

  /** Difference. */
  public Linearised minus(Linearised other) {
    return combined(other, value - other.value, 1, -1);
  }

  /** Product. */
  public Linearised times(Linearised other) {
    return combined(other, value * other.value, other.value, value);
  }

  /** Quotient; the divisor is not 0. */
  public Linearised dividedBy(Linearised divisor) {
    double quotient = value / divisor.value;
    return combined(divisor, quotient, 1 / divisor.value, -quotient / divisor.value);
  }

  /** Multiplied by an exact factor. */
  public Linearised scaled(double factor) {
    return mapped(value * factor, factor);
  }

  /** Shifted by an exact amount. */
  public Linearised shifted(double exact) {
    return new Linearised(inputs, value + exact, gradient);
  }

  /** Square root of a value above 0. */
  public Linearised squareRoot() {
    if (value <= 0) {
      throw new IllegalArgumentException("square root: value is " + value + ", expected above 0");
    }
    double root = Math.sqrt(value);
    return mapped(root, 0.5 / root);
  }

  /** Sine of an angle in radians. */
  public Linearised sine() {
    return mapped(StrictMath.sin(value), StrictMath.cos(value));
  }

  /** Cosine of an angle in radians. */
  public Linearised cosine() {
    return mapped(StrictMath.cos(value), -StrictMath.sin(value));
  }

  /** Tangent of an angle in radians. */
  public Linearised tangent() {
    double tangent = StrictMath.tan(value);
    return mapped(tangent, 1 + tangent * tangent);
  }

  /** Any other function of this quantity, given its value and its derivative here. */
  public Linearised mapped(double functionValue, double derivative) {
    double[] scaled = new double[gradient.length];
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] = derivative * gradient[i];
    }
    return new Linearised(inputs, functionValue, scaled);
  }

  /** Value. */
  public double value() {
    return value;
  }

  /**
   * Partial derivative with respect to one of the inputs (JCGM 100:2008, sensitivity coefficient).
   */
  public double sensitivity(String inputName) {
    return gradient[inputs.position(inputName)];
  }

  /** All of those, in the order of the inputs' names. */
  public double[] sensitivities() {
    return gradient.clone();
  }

  /** Variance. */
  public double variance() {
    return Math.max(0, inputs.product(gradient, gradient));
  }

  /** Value with standard uncertainty. */
  public Estimate estimate() {
    double variance = variance();
    return new Estimate(value, Math.sqrt(variance), inputs.budget(gradient, variance));
  }

  /** Covariance with another quantity of the same joint estimate. */
  public double covarianceWith(Linearised other) {
    requireSame(other);
    return inputs.product(gradient, other.gradient);
  }

  /**
   * Correlation coefficient with another quantity of the same joint estimate; 0 if one is exact.
   */
  public double correlationWith(Linearised other) {
    double scale = Math.sqrt(variance() * other.variance());
    return scale == 0 ? 0 : Math.max(-1, Math.min(1, covarianceWith(other) / scale));
  }

  private Linearised combined(Linearised other, double result, double mine, double others) {
    requireSame(other);
    double[] sum = new double[gradient.length];
    for (int i = 0; i < sum.length; i++) {
      sum[i] = mine * gradient[i] + others * other.gradient[i];
    }
    return new Linearised(inputs, result, sum);
  }

  private void requireSame(Linearised other) {
    if (inputs != other.inputs) {
      throw new IllegalArgumentException(
          "propagation: the two quantities come from different joint estimates; join these first");
    }
  }
}
