package datumpeg.bridge.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JsonWriterTest {
  private static final JsonObject SAMPLE =
      JsonObject.builder()
          .put("format", 1)
          .put("text", "a \"b\"\n±")
          .put("values", JsonArray.of(List.of(JsonDecimal.of(0.1), new JsonNull()).stream()))
          .put("empty", new JsonObject(Map.of()))
          .put("none", new JsonArray(List.of()))
          .put("flag", false)
          .build();

  @Test
  void compactTextStandsOnOneLine() {
    assertEquals(
        "{\"format\":1,\"text\":\"a \\\"b\\\"\\n±\",\"values\":[0.1,null],\"empty\":{},\"none\":[],"
            + "\"flag\":false}",
        JsonWriter.compact(SAMPLE));
  }

  @Test
  void prettyTextIsIndentedWithLineFeedsOnEveryPlatform() {
    assertEquals(
        """
        {
          "format": 1,
          "text": "a \\"b\\"\\n±",
          "values": [
            0.1,
            null
          ],
          "empty": {},
          "none": [],
          "flag": false
        }
        """,
        JsonWriter.pretty(SAMPLE));
  }

  /** 2.0E-3 and 1.0E23 are among the values that older versions of Java write with more digits. */
  @ParameterizedTest
  @CsvSource({
    "1e-8, 0.00000001",
    "2.0E-3, 0.002",
    "1.0E23, 100000000000000000000000.0",
    "0.1, 0.1",
    "-0.0, 0.0",
    "3, 3.0",
    "0.30000000000000004, 0.30000000000000004"
  })
  void decimalsAreWrittenInFewestDigitsWithoutExponent(double value, String expected) {
    assertEquals(expected, JsonWriter.compact(JsonDecimal.of(value)));
    assertEquals(value, Double.parseDouble(expected), 0);
  }

  @ParameterizedTest
  @CsvSource({"11.2, 11.2", "0, 0.0", "-0.0000004, 0.0", "0.0011544, 0.001154", "120000, 120000.0"})
  void roundedDecimalsKeepAtLeastOneDecimal(double value, String expected) {
    assertEquals(expected, JsonWriter.compact(JsonDecimal.rounded(value, 6)));
  }

  @Test
  void aTieIsRoundedToTheEvenDigit() {
    assertEquals("0.2", JsonWriter.compact(JsonDecimal.rounded(0.25, 1)));
    assertEquals("0.8", JsonWriter.compact(JsonDecimal.rounded(0.75, 1)));
  }

  @Test
  void whatIsNotFiniteIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> JsonDecimal.of(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> JsonDecimal.of(1 / 0.0));
  }

  @Test
  void aMemberIsPutOnce() {
    assertThrows(
        IllegalArgumentException.class, () -> JsonObject.builder().put("a", 1).put("a", 2));
  }
}
