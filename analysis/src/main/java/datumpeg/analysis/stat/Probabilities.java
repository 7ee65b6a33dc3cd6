package datumpeg.analysis.stat;

/** Checks at the door, shared by the distributions. */
final class Probabilities {
  private Probabilities() {}

  static double requireInside(String distribution, double probability) {
    if (!(probability > 0 && probability < 1)) {
      throw new IllegalArgumentException(
          distribution + " quantile: probability is " + probability + ", expected between 0 and 1");
    }
    return probability;
  }

  static void requireNumber(String distribution, double argument) {
    if (Double.isNaN(argument)) {
      throw new IllegalArgumentException(distribution + ": the argument is NaN, expected a number");
    }
  }

  static double requireDegrees(String distribution, double degreesOfFreedom) {
    if (!Double.isFinite(degreesOfFreedom) || degreesOfFreedom <= 0) {
      throw new IllegalArgumentException(
          distribution
              + ": degrees of freedom are "
              + degreesOfFreedom
              + ", expected finite and above 0");
    }
    return degreesOfFreedom;
  }
}
