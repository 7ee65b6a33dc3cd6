package datumpeg.analysis.stat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Normal, chi-squared and Student's t against printed tables and each other. */
final class DistributionsTest {
  /** One-sided normal points, to the digits printed in any table (computed with scipy). */
  @ParameterizedTest
  @CsvSource({".80,.8416", ".90,1.2816", ".95,1.6449", ".975,1.9600", ".99,2.3263", ".999,3.0902"})
  void normalHasThePrintedPoints(double probability, double z) {
    assertEquals(z, Normal.quantile(probability), 5e-5);
    assertEquals(probability, Normal.cdf(Normal.quantile(probability)), 1e-14);
  }

  /** JCGM 106:2012, conformance probability of y with u inside two limits (computed with scipy). */
  @ParameterizedTest
  @CsvSource({
    "0,1,-2,2,.954500",
    "1,1,-2,2,.839995",
    "8,1.5,-10,10,.908789",
    "11,1.5,-10,10,.252493"
  })
  void normalGivesTheConformanceProbability(
      double y, double u, double lower, double upper, double probability) {
    assertEquals(probability, Normal.cdf((upper - y) / u) - Normal.cdf((lower - y) / u), 5e-7);
  }

  /** Upper tails computed with mpmath 1.2 at 40 digits, of the doubles nearest to z. */
  @ParameterizedTest
  @CsvSource({
    "0.0625,.4750823309707527788",
    "0.3,.38208857781104736693",
    "0.9,.18406012534675948265",
    "1.4375,.075287986412423404339",
    "2.71,.0033641604066691936975",
    "3.3,.0004834241423837775071",
    "4.5,3.3976731247300604017e-6",
    "5.0625,2.0689703270164974189e-7",
    "6.1,5.3034232629488415248e-10",
    "7.77,3.9243063161315743109e-15",
    "8.9,2.792334374939646629e-19"
  })
  void normalTailsKeepFourteenDigits(double z, double above) {
    assertEquals(1, Normal.cdf(-z) / above, 1e-14);
    assertEquals(1 - above, Normal.cdf(z), 1e-15);
  }

  /** Everywhere, and across the joints of the series, against the library. */
  @Test
  void normalAgreesWithTheLibrary() {
    NormalDistribution library = new NormalDistribution(0, 1);
    for (double z = -9.5; z <= 9.5; z += 0.00390625) {
      double expected = library.cumulativeProbability(z);
      assertEquals(1, Normal.cdf(z) / expected, 1e-13, "at " + z);
    }
  }

  @Test
  void normalKeepsItsDigitsInTheTail() {
    // Phi(-10) = 7.619853024160527e-24, computed with 50 digits
    assertEquals(1, Normal.cdf(-10) / 7.619853024160527e-24, 1e-10);
    assertEquals(0, Normal.cdf(Double.NEGATIVE_INFINITY));
    assertEquals(1, Normal.cdf(Double.POSITIVE_INFINITY));
    assertEquals(0.05, Normal.twoSided(1.959963984540054), 1e-14);
    assertEquals(1 / Math.sqrt(2 * Math.PI), Normal.density(0), 1e-16);
  }

  @Test
  void chiSquaredHasThePrintedPoints() {
    assertEquals(3.8415, ChiSquared.quantile(0.95, 1), 5e-5);
    assertEquals(2.7055, ChiSquared.quantile(0.90, 1), 5e-5);
    assertEquals(18.307, ChiSquared.quantile(0.95, 10), 5e-4);
  }

  @Test
  void chiSquaredWithOneDegreeIsTheSquareOfANormalValue() {
    for (double z : new double[] {0.1, 1, 2, 5, 8}) {
      assertEquals(1, ChiSquared.survival(z * z, 1) / Normal.twoSided(z), 1e-9);
    }
  }

  @Test
  void chiSquaredWithTwoDegreesIsExponential() {
    for (double x : new double[] {0.01, 1, 20, 300}) {
      assertEquals(1, ChiSquared.survival(x, 2) / StrictMath.exp(-x / 2), 1e-12);
      assertEquals(1, ChiSquared.survival(x, 2) + ChiSquared.cdf(x, 2), 1e-14);
    }
    assertEquals(0, ChiSquared.cdf(-1, 2));
    assertEquals(1, ChiSquared.survival(0, 2));
  }

  /**
   * JCGM 100:2008 table G.2 (the same in NIST Technical Note 1297, table B.1), two-sided, 68.27,
   * 90, 95, 95.45, 99 and 99.73 %, two decimals. One entry is printed as 235.80 and is 235.784.
   */
  @ParameterizedTest
  @CsvSource({
    "1,1.84,6.31,12.71,13.97,63.66,235.784",
    "2,1.32,2.92,4.30,4.53,9.92,19.21",
    "3,1.20,2.35,3.18,3.31,5.84,9.22",
    "4,1.14,2.13,2.78,2.87,4.60,6.62",
    "5,1.11,2.02,2.57,2.65,4.03,5.51",
    "6,1.09,1.94,2.45,2.52,3.71,4.90",
    "8,1.07,1.86,2.31,2.37,3.36,4.28",
    "10,1.05,1.81,2.23,2.28,3.17,3.96",
    "16,1.03,1.75,2.12,2.17,2.92,3.54",
    "20,1.03,1.72,2.09,2.13,2.85,3.42",
    "50,1.01,1.68,2.01,2.05,2.68,3.16"
  })
  void studentHasThePrintedPoints(
      double degrees, double t68, double t90, double t95, double t9545, double t99, double t9973) {
    assertTwoSided(0.6827, t68, degrees);
    assertTwoSided(0.90, t90, degrees);
    assertTwoSided(0.95, t95, degrees);
    assertTwoSided(0.9545, t9545, degrees);
    assertTwoSided(0.99, t99, degrees);
    assertTwoSided(0.9973, t9973, degrees);
  }

  /** To half of the last digit printed; the percentages are themselves rounded. */
  private static void assertTwoSided(double probability, double t, double degrees) {
    double quantile = StudentT.quantile((1 + probability) / 2, degrees);
    assertEquals(t, quantile, Math.max(5.01e-3, 2e-4 * t), degrees + ", " + probability);
    assertEquals((1 + probability) / 2, StudentT.cdf(quantile, degrees), 1e-9);
  }

  /** The table's last row: the normal distribution, to which Student's tends. */
  @ParameterizedTest
  @CsvSource({"0.90,1.645", "0.95,1.960", "0.9545,2.000", "0.99,2.576", "0.9973,3.000"})
  void studentOfManyDegreesIsNormal(double probability, double z) {
    assertEquals(z, Normal.quantile((1 + probability) / 2), 5e-4);
    assertEquals(z, StudentT.quantile((1 + probability) / 2, 1e7), 5e-4);
  }

  @Test
  void refusesWhatIsNoQuestion() {
    assertThrows(IllegalArgumentException.class, () -> Normal.cdf(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> Normal.quantile(1.5));
    assertThrows(IllegalArgumentException.class, () -> Normal.quantile(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> ChiSquared.survival(1, 0));
    assertThrows(IllegalArgumentException.class, () -> ChiSquared.cdf(Double.NaN, 1));
    assertThrows(IllegalArgumentException.class, () -> StudentT.cdf(1, -2));
    assertThrows(IllegalArgumentException.class, () -> StudentT.quantile(0, 4));
  }
}
