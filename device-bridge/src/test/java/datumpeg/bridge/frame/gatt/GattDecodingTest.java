package datumpeg.bridge.frame.gatt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Descriptor layout: Bluetooth Core Specification, volume 3, part G, 3.3.3.5; the layout and the
 * value 3892 with exponent −3 stand in the documentation of Mbed OS, class GattCharacteristic.
 */
class GattDecodingTest {

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    // Bytes computed by hand from the layout.
    "08FD0127010000, 69280000, 10.345, METRE, 10.345",
    "0EFE6327010000, 85FF, -1.23, DEGREE, -0.021467549799530254",
    "06FD0127010000, 340F, 3.892, METRE, 3.892",
    "06000127010000, 0C00, 12, METRE, 12",
    "04010127010000, 0C, 120, METRE, 120",
    "0CFF6327010000, 85, -12.3, DEGREE, -0.21467549799530256",
    "0FFD0127010000, FFFFFF, -0.001, METRE, -0.001",
    "09FD0127010000, 692800000000, 10.345, METRE, 10.345",
    "0EFC2027010000, 85FF, -0.0123, RADIAN, -0.0123",
    "06FEA227010000, E803, 10.00, INCH, 0.254",
    "06FEA327010000, E803, 10.00, FOOT, 3.048",
    "12FD0127010000, FFFFFFFFFFFFFFFF, -0.001, METRE, -0.001",
    "0AFD0127010000, 6928000000000000, 10.345, METRE, 10.345",
  })
  void readsIntegersWithTheirExponent(
      String descriptor, String value, String text, Unit unit, double siValue) {
    Measured measured = assertInstanceOf(Measured.class, decode(descriptor, value));
    assertEquals(text, measured.valueText());
    assertEquals(unit, measured.unit());
    assertEquals(siValue, measured.siValue(), 1e-15);
  }

  @Test
  void readsFloats() {
    Measured single = assertInstanceOf(Measured.class, decode("14000127010000", "4A0C4041"));
    assertEquals("12.003", single.valueText());
    assertEquals(12.003, single.siValue(), 1e-12);
    Measured twice = assertInstanceOf(Measured.class, decode("15000127010000", "A8C64B3789012840"));
    assertEquals("12.003", twice.valueText());
    assertInstanceOf(NotAReading.class, decode("14000127010000", "0000C07F"));
    assertInstanceOf(NotAReading.class, decode("14000127010000", "0000807F"));
  }

  /**
   * Source: HL7, Personal Health Devices implementation guide, page "MDER FLOATs and SFLOATs"; its
   * decimal for 0x01000002 is a slip there and left out. The five that are no numbers: Nordic
   * Semiconductor, sfloat.h.
   */
  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource({
    "0200, 2",
    "14F0, 2.0",
    "C8E0, 2.00",
    "0210, 20",
    "0220, 200",
    "C800, 200",
    "D204, 1234",
    "2E0B, -1234",
    "6CF1, 36.4",
    "D0D7, 2.000",
    "30D8, -2.000",
  })
  void readsTheSixteenBitFloatWithItsPrecision(String value, String text) {
    Measured measured = assertInstanceOf(Measured.class, decode("16006327010000", value));
    assertEquals(text, measured.valueText());
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource({
    "02000000, 2",
    "140000FF, 2.0",
    "C80000FE, 2.00",
    "02000001, 20",
    "D2040000, 1234",
    "2EFBFF00, -1234",
    "6C0100FF, 36.4",
    "E32E00FD, 12.003",
    "85FFFFFE, -1.23",
  })
  void readsTheThirtyTwoBitFloatWithItsPrecision(String value, String text) {
    Measured measured = assertInstanceOf(Measured.class, decode("17000127010000", value));
    assertEquals(text, measured.valueText());
  }

  @ParameterizedTest
  @CsvSource({"FF07", "0008", "FE07", "0208", "0108"})
  void takesNoNumberForAReading(String value) {
    assertInstanceOf(NotAReading.class, decode("16006327010000", value));
  }

  /** The thirty-two-bit specials: from memory, verify against IEEE 11073-20601. */
  @ParameterizedTest
  @CsvSource({"FFFF7F00", "00008000", "FEFF7F00", "02008000", "01008000"})
  void takesNoWideNumberForAReading(String value) {
    assertInstanceOf(NotAReading.class, decode("17006327010000", value));
  }

  @Test
  void readsTextAndValuesBehindAHeader() {
    PresentationFormat text = new PresentationFormat(GattFormat.UTF8, 0, Unit.METRE);
    Bytes line = Bytes.of("12.003 m".getBytes(java.nio.charset.StandardCharsets.UTF_8));
    assertEquals(
        12.003, assertInstanceOf(Measured.class, new GattDecoding(text).decode(line)).siValue());
    PresentationFormat whole = new PresentationFormat(GattFormat.UINT16, -3, Unit.METRE);
    Decoded behind = new GattDecoding(whole, 2).decode(Bytes.ofHex("a501340fff"));
    assertEquals("3.892", assertInstanceOf(Measured.class, behind).valueText());
  }

  @Test
  void saysWhatIsWrongWithAValueOfAnotherLength() {
    NotAReading found = assertInstanceOf(NotAReading.class, decode("08FD0127010000", "6928"));
    assertEquals("it has 2 bytes; a value of uint32 has 4", found.detail());
  }

  @Test
  void aDescriptorOfAnotherKindSaysNothing() {
    assertFalse(PresentationFormat.of(Bytes.ofHex("08fd01270100")).isPresent());
    assertFalse(PresentationFormat.of(Bytes.ofHex("08fd2f27010000")).isPresent(), "Celsius");
    assertFalse(PresentationFormat.of(Bytes.ofHex("1bfd0127010000")).isPresent(), "structure");
    assertTrue(PresentationFormat.of(Bytes.ofHex("08fda227010000")).isPresent(), "inch");
  }

  @Test
  void isTotal() {
    SplittableRandom random = new SplittableRandom(20260302);
    for (int run = 0; run < 20_000; run++) {
      byte[] value = new byte[random.nextInt(12)];
      random.nextBytes(value);
      GattFormat[] formats = GattFormat.values();
      PresentationFormat format =
          new PresentationFormat(
              formats[random.nextInt(formats.length)], (byte) random.nextInt(), Unit.METRE);
      Decoded decoded = new GattDecoding(format, random.nextInt(3)).decode(Bytes.of(value));
      if (decoded instanceof Measured measured) {
        assertTrue(measured.valueText().length() < 400, measured.valueText());
      }
    }
  }

  private static Decoded decode(String descriptor, String value) {
    PresentationFormat format = PresentationFormat.of(Bytes.ofHex(descriptor)).orElseThrow();
    return new GattDecoding(format).decode(Bytes.ofHex(value));
  }
}
