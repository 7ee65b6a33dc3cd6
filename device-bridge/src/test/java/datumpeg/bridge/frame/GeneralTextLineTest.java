package datumpeg.bridge.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.Quantity;
import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.Decoded.Reason;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.Chars;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GeneralTextLineTest {
  /** A millionth of a millimetre: only rounding of doubles lies below it. */
  private static final double TOLERANCE = 1e-12;

  private final GeneralTextLine decoding = new GeneralTextLine(Unit.METRE);

  private Decoded decode(String line) {
    return decoding.decode(Bytes.of(line.getBytes(StandardCharsets.UTF_8)));
  }

  private Measured measured(String line) {
    return assertInstanceOf(Measured.class, decode(line), line);
  }

  private void assertNot(Reason reason, String line) {
    NotAReading not = assertInstanceOf(NotAReading.class, decode(line), line);
    assertEquals(reason, not.reason(), line + ": " + not.detail());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        // line | number as kept | unit | metres or radians
        "12.3456 m|12.3456|METRE|12.3456",
        "12,3456 m|12,3456|METRE|12.3456",
        "12.3456m|12.3456|METRE|12.3456",
        "+0012.345 M|+0012.345|METRE|12.345",
        ".5 m|.5|METRE|0.5",
        "12345.6 mm|12345.6|MILLIMETRE|12.3456",
        "1234.56cm|1234.56|CENTIMETRE|12.3456",
        "12.3456|12.3456|METRE|12.3456",
        "D: 12.3456 m|12.3456|METRE|12.3456",
        "Dist = -0,004 m|-0,004|METRE|-0.004",
        "D1 12.3456 m|12.3456|METRE|12.3456",
        "#3 12.3456 m|12.3456|METRE|12.3456",
        "3: 12.3456 m|12.3456|METRE|12.3456",
        "D-mode 2) 5 m|5|METRE|5",
        "-0.00 m|-0.00|METRE|0",
        // 1 ft = 0.3048 m, 1 in = 0.0254 m: NIST SP 811 (2008), appendix B.8
        "10 ft|10|FOOT|3.048",
        "9.5 feet|9.5|FOOT|2.8956",
        "100 in|100|INCH|2.54",
        "29'|29|FOOT|8.8392",
        "6.5\"|6.5|INCH|0.1651",
        "6.5''|6.5|INCH|0.1651",
        // 29 × 12 + 6.375 = 354.375 in; × 0.0254 = 9.001125 m
        "29' 6 3/8\"|29' 6 3/8\"|FOOT_AND_INCH|9.001125",
        "29'6-3/8\"|29'6-3/8\"|FOOT_AND_INCH|9.001125",
        "29'-6 3/8\"|29'-6 3/8\"|FOOT_AND_INCH|9.001125",
        "29 ft 6 3/8 in|29 ft 6 3/8 in|FOOT_AND_INCH|9.001125",
        "29ft6.375in|29ft6.375in|FOOT_AND_INCH|9.001125",
        "-29' 6 3/8\"|-29' 6 3/8\"|FOOT_AND_INCH|-9.001125",
        "29′ 6 3/8″|29′ 6 3/8″|FOOT_AND_INCH|9.001125",
        "Span: 29' 6 3/8\"|29' 6 3/8\"|FOOT_AND_INCH|9.001125",
        "29'06\"3/8|29'06 3/8\"|FOOT_AND_INCH|9.001125",
        "-29'06\"3/8\"|-29'06 3/8\"|FOOT_AND_INCH|-9.001125",
        "06\"3/8|06 3/8\"|FOOT_AND_INCH|0.161925",
        "6 3/8 in|6 3/8 in|FOOT_AND_INCH|0.161925",
        "3/8\"|3/8\"|FOOT_AND_INCH|0.009525",
        // 180 degrees = pi: pi/180 = 0.017453292519943295
        "1 deg|1|DEGREE|0.017453292519943295",
        "-0.5°|-0.5|DEGREE|-0.008726646259971648",
        "Tilt = +0.5 º|+0.5|DEGREE|0.008726646259971648",
        "X:-0,5°|-0,5|DEGREE|-0.008726646259971648",
        "−0.5°|-0.5|DEGREE|-0.008726646259971648",
        "- 0.5°|-0.5|DEGREE|-0.008726646259971648",
        "0.25 rad|0.25|RADIAN|0.25",
        // atan(0.0035) = 0.0035 − 0.0035³/3 + 0.0035⁵/5 (alternating series, next term 1e-18)
        "3.5 mm/m|3.5|MILLIMETRE_PER_METRE|0.003499985708438376",
        "0.35 %|0.35|PERCENT|0.003499985708438376",
      })
  void aLineWithOneValueIsAReading(String line, String valueText, Unit unit, double siValue) {
    Measured measured = measured(line);
    assertEquals(valueText, measured.valueText());
    assertEquals(unit, measured.unit());
    assertEquals(unit.dimension(), measured.dimension());
    assertEquals(siValue, measured.siValue(), TOLERANCE);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "NO_NUMBER|``",
        "NO_NUMBER|Hello",
        "NO_NUMBER|DM",
        "NO_NUMBER|#3",
        "NO_NUMBER|E255",
        "STATUS|BATT 87%",
        "STATUS|Battery: 3.7 V",
        "STATUS|12.345 m batt low",
        "STATUS|TEMP 11.5 °C",
        "STATUS|Err: 255",
        "STATUS|ID 12345",
        "STATUS|OK",
        "ECHO|> 12.345 m",
        "ECHO|?D",
        "ECHO|$1 12.3 m",
        "ECHO|*000 12.3",
        "AMBIGUOUS|12.345 m 9.500 m",
        "AMBIGUOUS|12.345 9.500",
        "AMBIGUOUS|12.345 m, 0079",
        "AMBIGUOUS|3: 12.345",
        "AMBIGUOUS|mm 12345",
        "UNKNOWN_UNIT|12.345 m2",
        "AMBIGUOUS|D-12.345 m",
        "AMBIGUOUS|D - 12.345 m",
        "AMBIGUOUS|2026-03-02",
        "AMBIGUOUS|12:30:45",
        "AMBIGUOUS|0°21'",
        "AMBIGUOUS|--12.345 m",
        "AMBIGUOUS|1:500",
        "AMBIGUOUS|1.2345E+01 m",
        "UNKNOWN_UNIT|12.345 V",
        "UNKNOWN_UNIT|12.345 m/s",
        "UNKNOWN_UNIT|12.345 m²",
        "UNKNOWN_UNIT|12.345 km",
        "UNKNOWN_UNIT|12.345 in/ft",
        "UNKNOWN_UNIT|11.5 ° C",
        "UNKNOWN_UNIT|12.345 m max",
        "AMBIGUOUS|12.345 m*5A",
        "MALFORMED|1,234.5 mm",
        "MALFORMED|1.234,5 mm",
        "MALFORMED|12.3.4 m",
        "MALFORMED|12. m",
        "MALFORMED|1234567890123456789 mm",
        "MALFORMED|3/8 m",
        "MALFORMED|3/0 in",
        "MALFORMED|9/8 in",
        "MALFORMED|3/7 in",
        // Behind a blank it may be the third of eight readings.
        "AMBIGUOUS|29'06\" 3/8",
        "MALFORMED|29'06\"9/8",
        "MALFORMED|29'06\"3/7",
        "AMBIGUOUS|29'06.5\"3/8",
        "MALFORMED|29' 12 in",
        "MALFORMED|29.5' 6 in",
        "MALFORMED|29' 6 3/8",
        "MALFORMED|29' 6",
        "MALFORMED|& 12.345 m",
      })
  void anyOtherLineIsNotAReadingForAStatedReason(Reason reason, String line) {
    assertNot(reason, line);
  }

  @Test
  void theDegreeSignIsReadInUtf8Latin1AndCodePage437() {
    for (Charset charset : new Charset[] {StandardCharsets.UTF_8, StandardCharsets.ISO_8859_1}) {
      Decoded decoded = decoding.decode(Bytes.of("-0.5\u00B0".getBytes(charset)));
      assertEquals(Unit.DEGREE, assertInstanceOf(Measured.class, decoded).unit());
    }
    // Code page 437 has the degree sign at 0xF8 (IBM, CPGID 00437).
    Bytes codePage437 = Bytes.ofHex("2d302e35f8");
    Decoded decoded = decoding.decode(codePage437);
    Measured measured = assertInstanceOf(Measured.class, decoded);
    assertEquals(Unit.DEGREE, measured.unit());
    assertEquals("-0.5", measured.valueText());
    assertEquals(-0.5 * StrictMath.PI / 180, measured.siValue(), TOLERANCE);
  }

  @Test
  void controlCharactersAtTheEndsAreIgnoredAndInsideMakeTheLineUnreadable() {
    assertEquals(12.345, measured("\u0002\u0000 12.345 m\u0003\u007F").siValue(), TOLERANCE);
    assertEquals(12.345, measured("\t12.345\tm\t").siValue(), TOLERANCE);
    assertNot(Reason.UNREADABLE, "12.\u0000345 m");
    assertNot(Reason.UNREADABLE, "12\u00083.45 m");
    Decoded notText = decoding.decode(Bytes.ofHex("31322e338520 6d".replace(" ", "")));
    assertEquals(Reason.UNREADABLE, assertInstanceOf(NotAReading.class, notText).reason());
  }

  @Test
  void aBareNumberIsInTheUnitOfTheProfile() {
    GeneralTextLine tilt = new GeneralTextLine(Unit.DEGREE);
    Decoded decoded = tilt.decode(Bytes.ofHex("2d302e35"));
    assertEquals(-0.5 * StrictMath.PI / 180, ((Measured) decoded).siValue(), TOLERANCE);
    assertThrows(IllegalArgumentException.class, () -> new GeneralTextLine(Unit.FOOT_AND_INCH));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "18 m",
        "-150.25 mm",
        "29 ft 6 3/8 in",
        "29' 6 3/8\"",
        "10 deg",
        "0.5 %",
        "3/8 in"
      })
  void aValueReadsAsTheJobFileReadsIt(String text) {
    assertEquals(Quantity.parse(text).siValue(), measured(text).siValue(), TOLERANCE);
  }

  @Test
  void aLongHostileLineTakesNoLongerThanItsLength() {
    for (String piece : new String[] {"1 ", "- ", "1/", "a1-", "' ", "1.", "(((", "29' 6 3/"}) {
      String line = piece.repeat(200_000);
      Decoded decoded = assertTimeoutPreemptively(Duration.ofSeconds(60), () -> decode(line));
      assertInstanceOf(NotAReading.class, decoded);
    }
  }

  @Property(seed = "20260302")
  void anyBytesGiveAnAnswer(@ForAll byte[] line) {
    Decoded decoded = decoding.decode(Bytes.of(line));
    assertNotNull(decoded);
  }

  @Property(seed = "20260302")
  void anyLineOfTheAlphabetOfMetersGivesAFiniteValueOrAReason(
      @ForAll
          @Chars({' ', '.', ',', '+', '-', '/', '\'', '"', '%', ':', '#', 'm', 'f', 't', 'i', 'n'})
          @CharRange(from = '0', to = '9')
          @StringLength(max = 24)
          String line) {
    Decoded decoded = decode(line);
    if (decoded instanceof Measured measured) {
      assertTrue(Double.isFinite(measured.siValue()));
      assertTrue(line.replace(" ", "").contains(measured.valueText().replace(" ", "")));
    } else {
      assertTrue(!((NotAReading) decoded).detail().isBlank());
    }
  }
}
