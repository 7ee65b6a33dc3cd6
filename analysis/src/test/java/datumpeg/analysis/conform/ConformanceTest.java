package datumpeg.analysis.conform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.uncertainty.Estimate;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConformanceTest {

  private static Limits plusMinus(double limit) {
    return new Limits(OptionalDouble.of(-limit), OptionalDouble.of(limit), "invented");
  }

  /** Formula: JCGM 106:2012, 7.3 and 7.4; values computed with scipy. */
  @ParameterizedTest
  @CsvSource({
    "0, 1, 2, 0.954500", "1, 1, 2, 0.839995", "2, 1, 2, 0.499968", "8, 1.5, 10, 0.908789",
    "9, 1.5, 10, 0.747507", "10, 1.5, 10, 0.500000", "11, 1.5, 10, 0.252493",
        "8, 0.75, 10, 0.996170"
  })
  void probabilityBetweenTwoLimits(double y, double u, double limit, double expected) {
    assertEquals(
        expected, Conformance.probabilityWithin(new Estimate(y, u), plusMinus(limit)), 1e-6);
  }

  /** One-sided standard normal quantiles, from the same table. */
  @ParameterizedTest
  @CsvSource({
    ".80, .8416",
    ".90, 1.2816",
    ".95, 1.6449",
    ".975, 1.9600",
    ".99, 2.3263",
    ".999, 3.0902"
  })
  void probabilityBelowOneLimit(double expected, double z) {
    Limits upper = new Limits(OptionalDouble.empty(), OptionalDouble.of(z), "invented");
    assertEquals(expected, Conformance.probabilityWithin(new Estimate(0, 1), upper), 2e-5);
  }

  @Test
  void aValueWithoutUncertaintyOnTheLimitConforms() {
    assertEquals(1, Conformance.probabilityWithin(Estimate.exact(10), plusMinus(10)));
    assertEquals(0, Conformance.probabilityWithin(Estimate.exact(10.001), plusMinus(10)));
  }

  @Test
  void theVerdictHasThreeValues() {
    assertEquals(Verdict.CONFORMING, DecisionRule.DEFAULT.verdict(0.95));
    assertEquals(Verdict.UNDECIDED, DecisionRule.DEFAULT.verdict(0.949));
    assertEquals(Verdict.UNDECIDED, DecisionRule.DEFAULT.verdict(0.051));
    assertEquals(Verdict.NONCONFORMING, DecisionRule.DEFAULT.verdict(0.05));
  }

  @ParameterizedTest
  @CsvSource({"8", "9.5", "11", "14"})
  void theUncertaintyToDecideDoesDecide(double y) {
    double u = new Decision(DecisionRule.DEFAULT).neededForValue(y, plusMinus(10));
    double p = Conformance.probabilityWithin(new Estimate(y, u), plusMinus(10));
    assertEquals(y < 10 ? 0.95 : 0.05, p, 1e-4);
  }

  /**
   * Nine points with u = 1 whose true spread is just the limit: wrongly accepted in at most 5 %,
   * and just below it wrongly rejected in at most 5 %, for three shapes of the truth. 4,000
   * simulated sets each, fixed seed; the bound allows three standard deviations of the simulation.
   */
  @ParameterizedTest
  @CsvSource({"1", "2", "3"})
  void theSpreadsErrorRatesHold(int shape) {
    SplittableRandom random = new SplittableRandom(20260302L + shape);
    int sets = 4000;
    int accepted = 0;
    int rejected = 0;
    double limit = 6;
    for (int set = 0; set < sets; set++) {
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      for (int point = 0; point < 9; point++) {
        double truth = truth(shape, point, limit);
        double observed = truth + gaussian(random);
        least = Math.min(least, observed);
        most = Math.max(most, observed);
      }
      double p = Conformance.probabilityOfSpread(most - least, 1, 9, limit);
      accepted += p >= 0.95 ? 1 : 0;
      rejected += p <= 0.05 ? 1 : 0;
    }
    double allowed = sets * (0.05 + 3 * Math.sqrt(0.05 * 0.95 / sets));
    assertTrue(accepted <= allowed, "accepted " + accepted + " of " + sets);
    assertTrue(rejected <= allowed, "rejected " + rejected + " of " + sets);
  }

  private static double truth(int shape, int point, double spread) {
    return switch (shape) {
      case 1 -> point == 0 ? 0 : point == 1 ? spread : spread / 2;
      case 2 -> spread * point / 8;
      default -> point % 2 == 0 ? 0 : spread;
    };
  }

  /** Box and Muller, 1958. */
  private static double gaussian(SplittableRandom random) {
    return Math.sqrt(-2 * StrictMath.log(1 - random.nextDouble()))
        * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
  }

  @Test
  void theSpreadsProbabilityFallsAsTheSpreadGrows() {
    double last = 1;
    for (double spread = 0; spread < 15; spread += 0.25) {
      double p = Conformance.probabilityOfSpread(spread, 1, 9, 6);
      assertTrue(p <= last);
      last = p;
    }
    assertTrue(last < 0.001);
  }
}
