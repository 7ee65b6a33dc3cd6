package datumpeg.analysis.report.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

final class RoundStepsTest {
  @Test
  void theGreatestStepNotAboveTheValueIsTaken() {
    assertEquals(50, RoundSteps.atMost(99.9));
    assertEquals(100, RoundSteps.atMost(100));
    assertEquals(1, RoundSteps.atMost(1.99));
    assertEquals(2, RoundSteps.atMost(2));
    assertEquals(0.5, RoundSteps.atMost(0.99));
    assertEquals(0.001, RoundSteps.atMost(0.0019));
  }

  @Test
  void whatHasNoStepIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> RoundSteps.atMost(0));
    assertThrows(IllegalArgumentException.class, () -> RoundSteps.atMost(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> RoundSteps.atMost(Double.POSITIVE_INFINITY));
  }

  @Test
  void deviationsAreExaggeratedByTheLargestStepThatFits() {
    // 1.8 m of room for 16 mm: 112 times would fit, so 100.
    assertEquals(100, Exaggeration.fitting(0.016, 1.8).factor());
    assertEquals(1000, Exaggeration.fitting(0, 1.8).factor());
    assertEquals(1, Exaggeration.fitting(5, 1.8).factor());
    assertEquals("100 times", Exaggeration.fitting(0.016, 1.8).text());
  }
}
