package datumpeg.analysis.slip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.measuring.WrittenValue;
import java.util.List;
import org.junit.jupiter.api.Test;

class DigitSwapsTest {
  private static List<String> swaps(String value, String unit) {
    return DigitSwaps.of(new WrittenValue(value, unit)).stream().map(WrittenValue::text).toList();
  }

  @Test
  void millimetresAreTransposedDigitByDigit() {
    assertEquals(List.of("9168 mm", "1698 mm", "1986 mm"), swaps("1968", "mm"));
  }

  @Test
  void centimetresAreTransposedOverTheDecimalPointToo() {
    assertEquals(List.of("951.0 cm", "519.0 cm", "590.1 cm"), swaps("591.0", "cm"));
  }

  @Test
  void equalDigitsAndNumbersThatWouldStartWithNothingAreLeftOut() {
    assertEquals(List.of(), swaps("11", "mm"));
    assertEquals(List.of("15.0 m"), swaps("10.5", "m"));
  }

  @Test
  void feetAndInchesStayWhatCanBeWritten() {
    assertEquals(List.of("92 ft 6 3/8 in"), swaps("29 ft 6 3/8 in", ""));
    assertEquals(List.of("92-10 3/8 ft-in"), swaps("29-10 3/8", "ft-in"));
    assertTrue(swaps("6 ft 12 in", "").isEmpty());
  }

  @Test
  void aSwapComesToItsValueAndTextThatIsNoneToNothing() {
    assertEquals(
        92 * 0.3048 + 6.375 * 0.0254,
        DigitSwaps.value(new WrittenValue("92 ft 6 3/8 in", "")).orElseThrow(),
        1e-12);
    assertEquals(9.51, DigitSwaps.value(new WrittenValue("951.0", "cm")).orElseThrow(), 1e-12);
    assertTrue(DigitSwaps.value(new WrittenValue("8/3 in", "")).isEmpty());
  }
}
