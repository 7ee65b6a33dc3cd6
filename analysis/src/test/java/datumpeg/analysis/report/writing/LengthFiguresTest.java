package datumpeg.analysis.report.writing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.analysis.quantity.LengthDisplay;
import org.junit.jupiter.api.Test;

final class LengthFiguresTest {
  private final LengthFigures metric = new LengthFigures(LengthDisplay.METRIC);
  private final LengthFigures imperial = new LengthFigures(LengthDisplay.IMPERIAL);

  @Test
  void deviationsCarryTheirSignAndTheirUncertainty() {
    assertEquals("+3.2 ± 1.5 mm", metric.deviation(0.0032, 0.0015));
    assertEquals("−0.13 ± 0.06 in", imperial.deviation(-0.0032, 0.0015));
    assertEquals("0.0 mm", metric.deviation(-0.00001));
  }

  @Test
  void sizesAreShownInTheReadersUnits() {
    assertEquals("18003.2", metric.size(18.0032));
    assertEquals("59' 0 3/4\"", imperial.size(18.0021));
  }

  @Test
  void stepsLoseNeedlessZerosOnly() {
    assertEquals("10 mm", metric.step(0.010));
    assertEquals("0.5 mm", metric.step(0.0005));
    assertEquals("100 mm", metric.step(0.1));
    assertEquals("0.2 in", imperial.step(0.00508));
  }
}
