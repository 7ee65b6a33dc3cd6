package datumpeg.analysis.stat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class StudentizedRangeTest {
  @Test
  void ofTwoValuesIsTheHalfNormalDistribution() {
    for (double w = 0.05; w < 9; w += 0.05) {
      double closed = 2 * Normal.cdf(w / Math.sqrt(2)) - 1;
      assertEquals(closed, StudentizedRange.cdf(w, 2), 2e-15 + 1e-14 * closed, "w = " + w);
    }
  }

  /** The leading term of the series at 0, by hand. */
  @ParameterizedTest
  @CsvSource({"2", "3", "5", "9"})
  void startsAsNTimesTheIntegralOfTheDensityPower(int n) {
    // F(w) -> n w^(n-1) integral phi^n = n w^(n-1) (2 pi)^(-(n-1)/2) / sqrt(n) for small w
    double w = 1e-3;
    double leading = n * Math.pow(w, n - 1) * Math.pow(2 * Math.PI, -0.5 * (n - 1)) / Math.sqrt(n);
    assertEquals(1, StudentizedRange.cdf(w, n) / leading, 1e-6);
  }

  /**
   * Upper 5 % points for infinite degrees of freedom as printed in tables of the studentized range
   * (for example Pearson and Hartley, Biometrika tables; recalled, not looked up).
   */
  @ParameterizedTest
  @CsvSource({
    "2,2.772",
    "3,3.314",
    "4,3.633",
    "5,3.858",
    "6,4.030",
    "8,4.286",
    "9,4.387",
    "10,4.474"
  })
  void hasThePublishedUpperFivePercentPoints(int n, double published) {
    assertEquals(published, StudentizedRange.quantile(0.95, n), 6e-4);
  }

  /**
   * Hartley's form of the integral (Biometrika 32, 1942, recalled), by Gauss-Legendre quadrature.
   */
  @ParameterizedTest
  @CsvSource({"2", "3", "5", "9", "25", "100", "400"})
  void agreesWithAnotherFormOfTheIntegralByAnotherRule(int n) {
    IterativeLegendreGaussIntegrator rule = new IterativeLegendreGaussIntegrator(24, 1e-14, 1e-15);
    for (double w : new double[] {0.5, 1, 2, 3.3, 4.4, 6, 8}) {
      double half = 2 * Normal.cdf(w / 2) - 1;
      double tail =
          rule.integrate(
              1_000_000,
              x -> Normal.density(x) * Math.pow(Normal.cdf(x) - Normal.cdf(x - w), n - 1),
              w / 2,
              w / 2 + 9);
      double expected = Math.pow(half, n) + 2 * n * tail;
      assertEquals(expected, StudentizedRange.cdf(w, n), 1e-13, "w = " + w);
    }
  }

  /** d2 of control charts: 7.1 of the check values, computed by another program's integration. */
  @ParameterizedTest
  @CsvSource({
    "2,1.12838",
    "3,1.69257",
    "4,2.05875",
    "5,2.32593",
    "6,2.53441",
    "7,2.70436",
    "8,2.84720",
    "9,2.97003",
    "10,3.07751"
  })
  void expectsTheRangesOfControlCharts(int n, double published) {
    assertEquals(published, StudentizedRange.expectedRange(n), 5e-6);
  }

  @Test
  void expectsTheClosedFormsForTwoAndThreeValues() {
    assertEquals(2 / Math.sqrt(Math.PI), StudentizedRange.expectedRange(2), 1e-14);
    assertEquals(3 / Math.sqrt(Math.PI), StudentizedRange.expectedRange(3), 1e-14);
  }

  /** The expectation is also the integral of 1 - F: two integrals, one number. */
  @ParameterizedTest
  @CsvSource({"2", "7", "40", "300"})
  void distributionAndExpectationAgree(int n) {
    double step = 0.05;
    double sum = 0.5;
    for (int i = 1; i < 320; i++) {
      sum += 1 - StudentizedRange.cdf(i * step, n);
    }
    // trapezoidal rule with the end correction step^2/12 (f'(0) is 0 for n above 2)
    double correction = n == 2 ? step * step / 12 / Math.sqrt(Math.PI) : 0;
    assertEquals(StudentizedRange.expectedRange(n), sum * step - correction, 1e-7);
  }

  @Test
  void agreesWithSimulation() {
    SplittableRandom random = new SplittableRandom(20260301);
    int runs = 200_000;
    double w = StudentizedRange.quantile(0.95, 9);
    int under = 0;
    for (int run = 0; run < runs; run++) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < 9; i++) {
        double value = Normal.quantile(random.nextDouble(1e-12, 1));
        low = Math.min(low, value);
        high = Math.max(high, value);
      }
      under += high - low <= w ? 1 : 0;
    }
    double sd = Math.sqrt(0.95 * 0.05 / runs);
    assertEquals(0.95, under / (double) runs, 4 * sd);
  }

  @ParameterizedTest
  @CsvSource({"1", "2", "5", "16", "120", "5000"})
  void ofTwoValuesIsStudentsDistribution(double degreesOfFreedom) {
    for (double q : new double[] {0.1, 1, 2.5, 4, 8, 20}) {
      double closed = 2 * StudentT.cdf(q / Math.sqrt(2), degreesOfFreedom) - 1;
      assertEquals(closed, StudentizedRange.cdf(q, 2, degreesOfFreedom), 1e-11, "q = " + q);
    }
  }

  /** Tukey's test of the NIST/SEMATECH handbook 7.4.7.1, and a value of R's ptukey/qtukey. */
  @Test
  void hasTheQuantilesOfTheHandbook() {
    assertEquals(4.046093, StudentizedRange.quantile(0.95, 4, 16), 1e-6);
    assertEquals(4.6543, StudentizedRange.quantile(0.95, 5, 10), 1e-4);
  }

  /** NIST/SEMATECH handbook 7.4.7.1: means of four groups of five, squares within 21.292. */
  @ParameterizedTest
  @CsvSource({
    "5.34,7.72,.02279",
    "5.34,8.56,.00221",
    "5.34,5.50,.99612",
    "7.72,8.56,.66446",
    "7.72,5.50,.03515",
    "8.56,5.50,.00345"
  })
  void hasTheProbabilitiesOfTheHandbook(double one, double other, double probability) {
    double q = Math.abs(one - other) / Math.sqrt(21.292 / 16 / 5);
    assertEquals(probability, 1 - StudentizedRange.cdf(q, 4, 16), 1e-5);
  }

  /** The same page: all six intervals of differences, to the two decimals printed. */
  @ParameterizedTest
  @CsvSource({
    "7.72,5.34,0.29,4.47",
    "8.56,5.34,1.13,5.31",
    "5.34,5.50,-2.25,1.93",
    "7.72,8.56,-2.93,1.25",
    "7.72,5.50,0.13,4.31",
    "8.56,5.50,0.97,5.15"
  })
  void hasTheIntervalsOfTheHandbook(double one, double other, double lower, double upper) {
    double half = StudentizedRange.quantile(0.95, 4, 16) * Math.sqrt(21.292 / 16 / 5);
    assertEquals(2.087368, half, 5e-6);
    assertEquals(lower, one - other - half, 5.1e-3);
    assertEquals(upper, one - other + half, 5.1e-3);
  }

  @Test
  void manyDegreesOfFreedomApproachTheKnownStandardDeviation() {
    assertEquals(StudentizedRange.cdf(3.5, 5), StudentizedRange.cdf(3.5, 5, 1e7), 1e-6);
  }

  @Test
  void quantileInvertsTheDistribution() {
    for (int n : new int[] {2, 6, 30, 400}) {
      for (double p : new double[] {1e-6, 0.05, 0.5, 0.95, 0.999}) {
        assertEquals(p, StudentizedRange.cdf(StudentizedRange.quantile(p, n), n), 1e-11);
      }
    }
  }

  @Test
  void growsFromZeroToOne() {
    assertEquals(0, StudentizedRange.cdf(0, 5));
    assertEquals(0, StudentizedRange.cdf(-1, 5));
    assertEquals(1, StudentizedRange.cdf(40, 5), 1e-13);
    assertEquals(1, StudentizedRange.cdf(Double.POSITIVE_INFINITY, 5), 1e-13);
    double before = 0;
    for (double w = 0.1; w < 12; w += 0.1) {
      double now = StudentizedRange.cdf(w, 25);
      assertTrue(now >= before);
      before = now;
    }
  }

  @Test
  void refusesWhatIsNoQuestion() {
    assertThrows(IllegalArgumentException.class, () -> StudentizedRange.cdf(1, 1));
    assertThrows(IllegalArgumentException.class, () -> StudentizedRange.cdf(Double.NaN, 3));
    assertThrows(IllegalArgumentException.class, () -> StudentizedRange.cdf(1, 3, 0));
    assertThrows(IllegalArgumentException.class, () -> StudentizedRange.quantile(0, 3));
    assertThrows(IllegalArgumentException.class, () -> StudentizedRange.quantile(1, 3));
  }
}
