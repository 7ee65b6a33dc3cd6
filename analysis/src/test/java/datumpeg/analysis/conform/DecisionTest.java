package datumpeg.analysis.conform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.stat.Normal;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecisionTest {
  private static final Decision BY_PROBABILITY = new Decision(DecisionRule.DEFAULT);

  private static Decision guarded(double factor) {
    return new Decision(DecisionRule.DEFAULT.with(new GuardBand(GuardBand.ISO_14253_1, factor)));
  }

  private static Limits between(double lower, double upper) {
    return new Limits(OptionalDouble.of(lower), OptionalDouble.of(upper), "invented");
  }

  private static Limits atMost(double upper) {
    return new Limits(OptionalDouble.empty(), OptionalDouble.of(upper), "invented");
  }

  /** Limits ±10, U = 3 (u = 1.5): conforming up to 7, nonconforming beyond 13, by hand. */
  @ParameterizedTest
  @CsvSource({
    "0, CONFORMING",
    "7, CONFORMING",
    "7.001, UNDECIDED",
    "10, UNDECIDED",
    "13, UNDECIDED",
    "13.001, NONCONFORMING",
    "-7, CONFORMING",
    "-7.001, UNDECIDED",
    "-13.001, NONCONFORMING"
  })
  void guardBandsDecideByZones(double y, Verdict expected) {
    assertEquals(
        expected, guarded(1).value(new Estimate(y, 1.5), between(-10, 10)).verdict(), "y = " + y);
  }

  @Test
  void guardBandsOfAsymmetricLimitsLieBesideEachOfThem() {
    Limits limits = between(-5, 10);
    assertEquals(Verdict.CONFORMING, guarded(1).value(new Estimate(-2, 1.5), limits).verdict());
    assertEquals(Verdict.UNDECIDED, guarded(1).value(new Estimate(-2.1, 1.5), limits).verdict());
    assertEquals(
        Verdict.NONCONFORMING, guarded(1).value(new Estimate(-8.1, 1.5), limits).verdict());
    assertEquals(Verdict.CONFORMING, guarded(1).value(new Estimate(7, 1.5), limits).verdict());
  }

  /**
   * Chance that a value truly on the limit is accepted = Φ(−2r) for k = 2 (ILAC-G8:09/2019 with w =
   * r·U; the values computed with scipy).
   */
  @ParameterizedTest
  @CsvSource({"0.5, 0.15866", "0.83, 0.04846", "1, 0.02275", "1.5, 0.00135"})
  void guardFactorSetsTheChanceOfWrongAcceptance(double factor, double expected) {
    assertEquals(expected, Normal.cdf(-Estimate.COVERAGE_FACTOR * factor), 1e-5);
    double edge = 10 - factor * 3;
    Decision decision = guarded(factor);
    assertEquals(Verdict.CONFORMING, decision.value(new Estimate(edge, 1.5), atMost(10)).verdict());
    assertEquals(
        Verdict.UNDECIDED, decision.value(new Estimate(edge + 1e-6, 1.5), atMost(10)).verdict());
  }

  @Test
  void withoutAGuardBandTheFactorZeroAcceptsUpToTheLimit() {
    assertEquals(Verdict.CONFORMING, guarded(0).value(new Estimate(10, 1.5), atMost(10)).verdict());
    assertEquals(
        Verdict.NONCONFORMING, guarded(0).value(new Estimate(10.1, 1.5), atMost(10)).verdict());
  }

  @Test
  void guardBandsThatMeetLeaveNothingToAccept() {
    assertTrue(guarded(1).canAcceptValue(4.9, between(-10, 10)));
    assertFalse(guarded(1).canAcceptValue(5.1, between(-10, 10)));
    assertEquals(
        Verdict.UNDECIDED, guarded(1).value(new Estimate(0, 5.1), between(-10, 10)).verdict());
    assertFalse(BY_PROBABILITY.canAcceptValue(5.2, between(-10, 10)), "2·Φ(10/5.2) − 1 = 0.9455");
    assertTrue(BY_PROBABILITY.canAcceptValue(5.1, between(-10, 10)), "2·Φ(10/5.1) − 1 = 0.9501");
    assertTrue(guarded(1).canAcceptValue(1000, atMost(10)));
    assertFalse(guarded(1).canAcceptSpread(4, atMost(10)), "2·√2·4 = 11.3");
    assertTrue(guarded(1).canAcceptSpread(3, atMost(10)), "2·√2·3 = 8.5");
  }

  /** u = 1, n = 2, limit 10: accepted to 10 − 2·√2, rejected beyond 10 + 2.7718 (q(.95; 2)). */
  @Test
  void guardBandsOfASpreadUseItsTwoBounds() {
    assertEquals(Verdict.CONFORMING, guarded(1).spread(7.17, 1, 2, atMost(10)).verdict());
    assertEquals(Verdict.UNDECIDED, guarded(1).spread(7.18, 1, 2, atMost(10)).verdict());
    assertEquals(Verdict.UNDECIDED, guarded(1).spread(12.77, 1, 2, atMost(10)).verdict());
    assertEquals(Verdict.NONCONFORMING, guarded(1).spread(12.78, 1, 2, atMost(10)).verdict());
  }

  @ParameterizedTest
  @CsvSource({"0", "3", "8", "9.5", "-7", "11", "14", "-12"})
  void whatIsNeededDecides(double y) {
    Limits limits = between(-10, 10);
    for (Decision decision : new Decision[] {BY_PROBABILITY, guarded(1), guarded(0.83)}) {
      double needed = decision.neededForValue(y, limits);
      assertFalse(
          decision.value(new Estimate(y, needed * 0.999), limits).verdict() == Verdict.UNDECIDED);
      assertEquals(
          Verdict.UNDECIDED, decision.value(new Estimate(y, needed * 1.01), limits).verdict());
    }
  }

  @ParameterizedTest
  @CsvSource({"7", "9.5", "11", "14"})
  void whatASpreadNeedsDecidesIt(double spread) {
    for (Decision decision : new Decision[] {BY_PROBABILITY, guarded(1)}) {
      double needed = decision.neededForSpread(spread, 10, decision.spreadCoverage(4));
      assertFalse(
          decision.spread(spread, needed * 0.999, 4, atMost(10)).verdict() == Verdict.UNDECIDED);
      assertEquals(
          Verdict.UNDECIDED, decision.spread(spread, needed * 1.02, 4, atMost(10)).verdict());
    }
  }

  @ParameterizedTest
  @CsvSource({"7", "9.5", "11", "14"})
  void whatAMaximumNeedsDecidesIt(double maximum) {
    for (Decision decision : new Decision[] {BY_PROBABILITY, guarded(1)}) {
      double needed = decision.neededForMaximum(maximum, 10, Decision.maximumCoverage(5));
      assertFalse(
          decision.maximum(maximum, needed * 0.999, 5, atMost(10)).verdict() == Verdict.UNDECIDED);
      assertEquals(
          Verdict.UNDECIDED, decision.maximum(maximum, needed * 1.02, 5, atMost(10)).verdict());
    }
  }

  /** One value's greatest absolute value is that value: two-sided 95 %, 1.95996. */
  @Test
  void theMaximumOfOneIsAnOrdinaryValue() {
    assertEquals(1.959964, Decision.maximumCoverage(1), 1e-6);
    assertEquals(0.05, Conformance.probabilityOfMaximum(11.959964, 1, 1, 10), 1e-6);
    assertEquals(0.95, Conformance.probabilityOfMaximum(10 - 1.644854, 1, 1, 10), 1e-6);
  }

  /**
   * Seven values with u = 1 whose greatest true absolute value is just the limit: wrongly accepted
   * in at most 5 %, wrongly rejected in at most 5 %, for independent and for shared errors. 4,000
   * sets each, fixed seed; the bound allows three standard deviations of the simulation.
   */
  @ParameterizedTest
  @CsvSource({"1, 0", "2, 0", "3, 0", "1, 0.8", "3, 0.8"})
  void theMaximumsErrorRatesHold(int shape, double correlation) {
    SplittableRandom random = new SplittableRandom(20260303L + shape);
    int sets = 4000;
    int accepted = 0;
    int rejected = 0;
    for (int set = 0; set < sets; set++) {
      double shared = gaussian(random);
      double most = 0;
      for (int i = 0; i < 7; i++) {
        double error =
            Math.sqrt(correlation) * shared + Math.sqrt(1 - correlation) * gaussian(random);
        most = Math.max(most, Math.abs(truth(shape, i) + error));
      }
      Verdict verdict = BY_PROBABILITY.maximum(most, 1, 7, atMost(6)).verdict();
      accepted += verdict == Verdict.CONFORMING ? 1 : 0;
      rejected += verdict == Verdict.NONCONFORMING ? 1 : 0;
    }
    double allowed = sets * (0.05 + 3 * Math.sqrt(0.05 * 0.95 / sets));
    assertTrue(accepted <= allowed, "accepted " + accepted + " of " + sets);
    assertTrue(rejected <= allowed, "rejected " + rejected + " of " + sets);
  }

  private static double truth(int shape, int i) {
    return switch (shape) {
      case 1 -> i == 0 ? 6 : 0;
      case 2 -> 6 - i;
      default -> i % 2 == 0 ? 6 : -6;
    };
  }

  /** Box and Muller, 1958. */
  private static double gaussian(SplittableRandom random) {
    return Math.sqrt(-2 * StrictMath.log(1 - random.nextDouble()))
        * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
  }
}
