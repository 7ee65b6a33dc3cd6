package datumpeg.analysis.stat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;

final class NormalPlusRectangularTest {
  /** Second route: the convolution integrated numerically with Hipparchus. */
  @Test
  void isTheConvolutionOfBoth() {
    IterativeLegendreGaussIntegrator integrator =
        new IterativeLegendreGaussIntegrator(20, 1e-12, 1e-12);
    for (double share : new double[] {0.01, 0.3, 0.64, 0.95, 0.999}) {
      double a = Math.sqrt(3 * share);
      NormalDistribution normal = new NormalDistribution(0, Math.sqrt(1 - share));
      NormalPlusRectangular sum = new NormalPlusRectangular(share);
      for (double z : new double[] {-3, -1.5, 0, 0.2, 1, 1.9, 2.4}) {
        double expected =
            integrator.integrate(100_000, t -> normal.cumulativeProbability(z - t), -a, a)
                / (2 * a);
        assertEquals(expected, sum.cdf(z), 1e-9, share + " " + z);
      }
    }
  }

  @Test
  void isEachOfTheTwoAtItsEnds() {
    assertEquals(Normal.cdf(1.3), new NormalPlusRectangular(0).cdf(1.3));
    assertEquals(Normal.cdf(1.3), new NormalPlusRectangular(1e-5).cdf(1.3), 1e-6);
    NormalPlusRectangular rectangular = new NormalPlusRectangular(1);
    assertEquals(0.5 + 0.5 / Math.sqrt(3), rectangular.cdf(1), 1e-15);
    assertEquals(1, rectangular.cdf(1.8));
    assertEquals(0, rectangular.cdf(Double.NEGATIVE_INFINITY));
  }

  /**
   * 1.65 covers 95 % of a rectangular error and 1.96 of a normal one: JCGM 100:2008, G.1.3, 6.3.3.
   */
  @Test
  void coversWhatWasAsked() {
    assertEquals(0.95 * Math.sqrt(3), new NormalPlusRectangular(1).coverageFactor(0.95), 1e-12);
    assertEquals(1.959964, new NormalPlusRectangular(0).coverageFactor(0.95), 1e-6);
    for (double share = 0.05; share < 1; share += 0.05) {
      NormalPlusRectangular sum = new NormalPlusRectangular(share);
      double k = sum.coverageFactor(0.95);
      assertEquals(0.95, sum.cdf(k) - sum.cdf(-k), 1e-10);
    }
  }

  @Test
  void refusesWhatIsNoShareOrProbability() {
    for (double share : new double[] {-0.1, 1.1, Double.NaN}) {
      assertThrows(IllegalArgumentException.class, () -> new NormalPlusRectangular(share));
    }
    assertThrows(
        IllegalArgumentException.class, () -> new NormalPlusRectangular(0.5).coverageFactor(1));
  }
}
