package datumpeg.bridge.frame.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.gatt.GattFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RegisterDecodingTest {

  /** 10.0 is 0x41200000 in IEEE 754; the four orders of its bytes. */
  @ParameterizedTest
  @CsvSource({
    "abcd, 41200000, 10.0",
    "cdab, 00004120, 10.0",
    "badc, 20410000, 10.0",
    "dcba, 00002041, 10.0",
    "abcd, 41400c4a, 12.003",
    "cdab, 0c4a4140, 12.003",
  })
  void readsAFloatInEachOrder(String order, String registers, String text) {
    Decoded decoded = decoding(GattFormat.FLOAT32, order, 0).decode(Bytes.ofHex(registers));
    assertEquals(text, assertInstanceOf(Measured.class, decoded).valueText());
  }

  @ParameterizedTest
  @CsvSource({
    "uint16, abcd, -3, 0f34, 3.892", "uint32, cdab, -3, 28690000, 10.345",
    "sint16, abcd, -2, ff85, -1.23", "sint32, dcba, -2, 85ffffff, -1.23",
  })
  void readsIntegers(String format, String order, int exponent, String registers, String text) {
    Decoded decoded =
        decoding(GattFormat.named(format).orElseThrow(), order, exponent)
            .decode(Bytes.ofHex(registers));
    assertEquals(text, assertInstanceOf(Measured.class, decoded).valueText());
  }

  @Test
  void saysThatAnAnswerHasAnotherLength() {
    NotAReading found =
        assertInstanceOf(
            NotAReading.class, decoding(GattFormat.FLOAT32, "abcd", 0).decode(Bytes.ofHex("4140")));
    assertEquals("the answer has 2 bytes; expected 4", found.detail());
  }

  @Test
  void refusesAFormatThatFillsNoRegister() {
    assertThrows(IllegalArgumentException.class, () -> decoding(GattFormat.UINT24, "abcd", 0));
    assertThrows(IllegalArgumentException.class, () -> decoding(GattFormat.UTF8, "abcd", 0));
  }

  private static RegisterDecoding decoding(GattFormat format, String order, int exponent) {
    return new RegisterDecoding(format, WordOrder.named(order).orElseThrow(), exponent, Unit.METRE);
  }
}
