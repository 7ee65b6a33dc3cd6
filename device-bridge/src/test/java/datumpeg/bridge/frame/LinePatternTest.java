package datumpeg.bridge.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.LinePattern.DecimalMark;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LinePatternTest {

  private static LinePattern pattern(String shape, Unit unit) {
    return LinePattern.of(LineShape.parse(shape), unit, DecimalMark.POINT, 0);
  }

  private static Decoded decode(LinePattern pattern, String line) {
    return pattern.decode(Bytes.of(line.getBytes(StandardCharsets.UTF_8)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{value},{number},{word} | 12.345,21.5,OK | 12.345",
        "{value},{number},{word} | +7,-3,LOW | 7",
        "D={value} m Q={number}% | D=9.001 m Q=87% | 9.001",
        "D={value} m | D=  9.001 m | ",
        "D= {value} m | D=   9.001   m | 9.001",
        "{number} {value} {rest} | 3 5.25 anything at all 9 | 5.25",
        "{number} {value} {rest} | 3 5.25 | ",
        "{value}{rest} | 5.25 | 5.25",
        "{value} m | - 5.25 m | -5.25",
        "{value} m | 5.25 mm | ",
        "{value} m | 5.25 | ",
        "{value} m | five m | ",
        "{value} m | .5 m | 0.5",
        "{value} m | 5. m | ",
        "{value} m | 1234567890123456789 m | "
      })
  void aLineFitsItsShapeOrIsNoReading(String shape, String line, String value) {
    Decoded decoded = decode(pattern(shape, Unit.METRE), line);
    if (value == null) {
      assertInstanceOf(NotAReading.class, decoded);
    } else {
      assertEquals(Double.parseDouble(value), ((Measured) decoded).siValue(), 1e-12);
    }
  }

  @Test
  void aCommaIsADecimalMarkOnlyWhereTheProfileSaysSo() {
    LinePattern comma =
        LinePattern.of(LineShape.parse("{value};{number}"), Unit.METRE, DecimalMark.COMMA, 0);
    assertEquals("12.345", ((Measured) decode(comma, "12,345;21,5")).valueText());
    assertInstanceOf(NotAReading.class, decode(comma, "12.345;21.5"));
  }

  @Test
  void anExponentMovesThePointAndNothingElse() {
    LinePattern tenths =
        LinePattern.of(LineShape.parse("{value}"), Unit.MILLIMETRE, DecimalMark.POINT, -1);
    Measured measured = (Measured) decode(tenths, "-123450");
    assertEquals("-12345.0", measured.valueText());
    assertEquals(-12.345, measured.siValue(), 1e-12);
  }

  @Test
  void theLineMayNameItsUnit() {
    LinePattern named = pattern("{value} {unit} {number}", Unit.METRE);
    assertEquals(0.005, ((Measured) decode(named, "5 mm 7")).siValue(), 1e-12);
    assertEquals(Unit.MILLIMETRE_PER_METRE, ((Measured) decode(named, "5 mm/m 7")).unit());
    assertInstanceOf(NotAReading.class, decode(named, "5 ells 7"));
  }

  @Test
  void aDirectionIsTheSign() {
    LinePattern arrow =
        new LinePattern(
            LineShape.parse("{value}\u00B0 {direction}"),
            Unit.DEGREE,
            DecimalMark.POINT,
            0,
            List.of("\u2193", "down"),
            List.of("\u2191", "up"));
    assertEquals("0.35", ((Measured) decode(arrow, "0.35\u00B0 \u2191")).valueText());
    assertEquals("-0.35", ((Measured) decode(arrow, "0.35\u00B0 \u2193")).valueText());
    assertEquals("-0.35", ((Measured) decode(arrow, "0.35\u00B0 down")).valueText());
    assertInstanceOf(NotAReading.class, decode(arrow, "0.35\u00B0 left"));
    assertInstanceOf(NotAReading.class, decode(arrow, "0.35\u00B0"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "no number",
        "{value} {value}",
        "{number}",
        "{valeu}",
        "{rest} {value}",
        "{value} {direction} {direction}",
        "{"
      })
  void aShapeThatCannotBeMeantIsRefused(String shape) {
    assertThrows(IllegalArgumentException.class, () -> LineShape.parse(shape));
  }

  @Test
  void aDirectionAndItsWordsBelongTogether() {
    LineShape with = LineShape.parse("{value}{direction}");
    LineShape without = LineShape.parse("{value}");
    assertThrows(
        IllegalArgumentException.class,
        () -> LinePattern.of(with, Unit.DEGREE, DecimalMark.POINT, 0));
    List<String> minus = List.of("<");
    assertThrows(
        IllegalArgumentException.class,
        () -> new LinePattern(without, Unit.DEGREE, DecimalMark.POINT, 0, minus, List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> new LinePattern(with, Unit.DEGREE, DecimalMark.POINT, 0, minus, minus));
  }

  /** What makes regular expressions go back and forth without end does nothing here. */
  @Test
  void noShapeMakesALongLineSlow() {
    LinePattern greedy =
        pattern("{word} ".repeat(20) + "{number} {number} {word}{word}{word}{value}x", Unit.METRE);
    String line = "a".repeat(500_000) + " " + "1".repeat(500_000);
    assertTimeoutPreemptively(
        Duration.ofSeconds(60),
        () -> {
          for (int i = 0; i < 20; i++) {
            assertInstanceOf(NotAReading.class, decode(greedy, line));
          }
        });
  }

  @Property(tries = 500, seed = "20260302")
  void anyBytesAreDecodedWithoutAnException(@ForAll byte[] bytes) {
    LinePattern pattern = pattern("{word}{number} {value} {unit}{rest}", Unit.METRE);
    Decoded decoded = pattern.decode(Bytes.of(bytes));
    assertTrue(decoded instanceof NotAReading || decoded instanceof Measured);
  }
}
