package datumpeg.analysis.report.drawing;

import java.math.BigDecimal;
import java.util.List;

/** The steps 1, 2, 5, 10, 20, 50 … that scales are chosen from. */
final class RoundSteps {
  private static final List<Integer> STEPS = List.of(5, 2, 1);

  private RoundSteps() {}

  /**
   * The greatest step not above a value; steps go on below 1 as 0.5, 0.2, 0.1 …
   *
   * @throws IllegalArgumentException unless the value is positive and finite
   */
  static double atMost(double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          "A scale step is sought for " + value + "; expected a finite number above 0.");
    }
    int exponent = (int) Math.floor(StrictMath.log10(value)) + 1;
    while (true) {
      for (int step : STEPS) {
        double candidate = BigDecimal.valueOf(step).scaleByPowerOfTen(exponent).doubleValue();
        if (candidate <= value) {
          return candidate;
        }
      }
      exponent--;
    }
  }
}
