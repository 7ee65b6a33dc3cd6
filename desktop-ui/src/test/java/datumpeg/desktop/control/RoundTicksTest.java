package datumpeg.desktop.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class RoundTicksTest {
  @Test
  void ticksAreRoundAndInside() {
    assertEquals(List.of(-5.0, 0.0, 5.0, 10.0, 15.0), RoundTicks.between(-8, 17, 8));
    assertEquals(List.of(0.0, 0.2, 0.4, 0.6), RoundTicks.between(0, 0.7, 5));
  }

  @Test
  void endsThatAreRoundAreTicks() {
    assertEquals(List.of(0.0, 5.0, 10.0), RoundTicks.between(0, 10, 3));
  }

  @Test
  void wholeStepsAreRoundAndNotBelowWhatIsWanted() {
    assertEquals(1, RoundTicks.wholeStep(0.3));
    assertEquals(2, RoundTicks.wholeStep(1.01));
    assertEquals(10, RoundTicks.wholeStep(5.7));
    assertEquals(20_000, RoundTicks.wholeStep(11_111));
  }

  @Test
  void neverMoreThanWanted() {
    for (int wanted = 2; wanted < 12; wanted++) {
      for (double high = 0.013; high < 1e5; high *= 1.7) {
        List<Double> ticks = RoundTicks.between(-0.37 * high, high, wanted);
        assertTrue(ticks.size() <= wanted, ticks + " for " + wanted);
      }
    }
  }

  @Test
  void axisWithoutLengthIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> RoundTicks.between(1, 1, 5));
    assertThrows(IllegalArgumentException.class, () -> RoundTicks.between(0, Double.NaN, 5));
    assertThrows(
        IllegalArgumentException.class, () -> RoundTicks.between(0, Double.POSITIVE_INFINITY, 5));
  }
}
