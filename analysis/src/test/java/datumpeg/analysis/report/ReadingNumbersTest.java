package datumpeg.analysis.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

final class ReadingNumbersTest {
  private final ReadingNumbers numbers = new ReadingNumbers(List.of(InventedFindings.arrival()));

  @Test
  void readingsAreNumberedAsTheyAreFirstUsed() {
    assertEquals("R1", numbers.text(List.of("D1")));
    assertEquals("R6", numbers.text(List.of("D6")));
  }

  @Test
  void runsAreDrawnTogether() {
    assertEquals("R1–R3, R5, R6", numbers.text(List.of("D5", "D1", "D6", "D3", "D2")));
    assertEquals("", numbers.text(List.of()));
  }
}
