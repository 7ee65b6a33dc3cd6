package datumpeg.analysis.stat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

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

  /** JCGM 100:2008 table G.2, 95 % two-sided. */
  @ParameterizedTest
  @CsvSource({"1,12.71", "2,4.30", "5,2.57", "10,2.23", "16,2.12", "50,2.01"})
  void studentHasThePrintedPoints(double degreesOfFreedom, double t) {
    assertEquals(t, StudentT.quantile(0.975, degreesOfFreedom), 6e-3);
    assertEquals(
        0.975, StudentT.cdf(StudentT.quantile(0.975, degreesOfFreedom), degreesOfFreedom), 1e-9);
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
