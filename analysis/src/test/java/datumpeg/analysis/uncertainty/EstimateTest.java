package datumpeg.analysis.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

final class EstimateTest {
  @Test
  void combinesIndependentPartsByRootSumOfSquares() {
    assertEquals(5, Estimate.combine(3, 4));
    assertEquals(0, Estimate.combine());
    assertEquals(0, Estimate.combine(0, 0));
    assertEquals(5e-200, Estimate.combine(3e-200, 4e-200), 1e-214);
  }

  @Test
  void addsSubtractsShiftsAndScales() {
    Estimate one = new Estimate(10, 3);
    Estimate other = new Estimate(4, 4);
    assertEquals(new Estimate(14, 5), one.plus(other));
    assertEquals(new Estimate(6, 5), one.minus(other));
    assertEquals(new Estimate(-20, 6), one.scaled(-2));
    assertEquals(new Estimate(11, 3), one.shifted(1));
    assertEquals(new Estimate(10, 5), one.widened(4, Origin.OTHER));
    assertEquals(new Estimate(14, 5), Estimate.sum(List.of(one, other)));
    assertEquals(Estimate.exact(0), Estimate.sum(List.of()));
  }

  @Test
  void expandsByTwoUnlessToldOtherwise() {
    Estimate estimate = new Estimate(0, 1.2);
    assertEquals(2.4, estimate.expanded());
    assertEquals(3.6, estimate.expanded(3), 1e-15);
  }

  /**
   * A tilt meter's budget in degrees, k = 2 of 0.05 on two faces, resolution 0.01, mounting 0.02
   * (computed by hand): 0.026848 degrees, 1.9681 mm over 4200 mm.
   */
  @Test
  void combinesABudget() {
    double combined = Estimate.combine(0.025 / Math.sqrt(2), 0.01 / Math.sqrt(12), 0.02);
    assertEquals(0.026848, combined, 5e-7);
    assertEquals(1.9681, 4200 * Math.toRadians(combined), 1e-4);
  }

  @Test
  void refusesWhatIsNoUncertainty() {
    assertThrows(IllegalArgumentException.class, () -> new Estimate(Double.NaN, 1));
    assertThrows(IllegalArgumentException.class, () -> new Estimate(1, -1e-9));
    assertThrows(IllegalArgumentException.class, () -> new Estimate(1, Double.POSITIVE_INFINITY));
    assertThrows(IllegalArgumentException.class, () -> Estimate.combine(1, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> Estimate.exact(1).expanded(0));
  }
}
