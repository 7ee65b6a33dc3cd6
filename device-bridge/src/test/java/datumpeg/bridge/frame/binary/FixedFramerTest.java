package datumpeg.bridge.frame.binary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.gatt.GattFormat;
import datumpeg.bridge.frame.gatt.PresentationFormat;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FixedFramerTest {
  private static final PresentationFormat TENTHS =
      new PresentationFormat(GattFormat.SINT32, -1, Unit.MILLIMETRE);

  /** aa 55, a status byte, the value most significant byte first, the sum. */
  private static final FrameShape SHAPE =
      new FrameShape(Bytes.ofHex("aa55"), 8, CheckSum.SUM, 3, ByteOrder.BIG, TENTHS);

  private static Bytes frame(int value) {
    String hex = "aa5507" + "%08x".formatted(value);
    return CheckSum.SUM.closing(Bytes.ofHex(hex));
  }

  private static List<Double> values(FixedFramer framer, Bytes... pieces) {
    List<Double> values = new ArrayList<>();
    FrameDecoding decoding = new FrameDecoding(SHAPE);
    for (Bytes piece : pieces) {
      for (Bytes found : framer.accept(piece)) {
        values.add(assertInstanceOf(Measured.class, decoding.decode(found)).siValue());
      }
    }
    return values;
  }

  @Test
  void everySplitGivesTheSameFrames() {
    Bytes stream = frame(123450).plus(frame(-35)).plus(frame(0xAA55));
    for (int cut = 0; cut <= stream.length(); cut++) {
      List<Double> values =
          values(new FixedFramer(SHAPE), stream.slice(0, cut), stream.slice(cut, stream.length()));
      assertEquals(3, values.size(), "cut at " + cut);
      assertEquals(12.345, values.get(0), 1e-12);
      assertEquals(-0.0035, values.get(1), 1e-12);
    }
  }

  @Test
  void garbageAndDamagedFramesBetweenAreLeftOut() {
    Bytes damaged = frame(77).slice(0, 7).plus(Bytes.ofHex("00"));
    Bytes half = frame(5).slice(0, 5);
    Bytes stream = Bytes.ofHex("55aaaa").plus(damaged).plus(half).plus(frame(123450));
    assertEquals(List.of(12.345), values(new FixedFramer(SHAPE), stream));
  }

  @Test
  void whatIsPendingWhenTheLinkIsLostIsNoFrame() {
    FixedFramer framer = new FixedFramer(SHAPE);
    framer.accept(frame(1).slice(0, 6));
    assertEquals(6, framer.discardPending().length());
    assertEquals(List.of(), framer.accept(frame(1).slice(6, 8)));
  }

  @Property(tries = 500, seed = "20260302")
  void anyBytesGiveFramesThatFitAndTheMemoryOfOne(@ForAll byte[] bytes) {
    FixedFramer framer = new FixedFramer(SHAPE);
    for (Bytes found : framer.accept(Bytes.of(bytes))) {
      assertTrue(CheckSum.SUM.fits(found));
    }
    assertTrue(framer.discardPending().length() < SHAPE.length());
  }

  @Test
  void aFrameThatIsTooShortIsNoReading() {
    assertInstanceOf(NotAReading.class, new FrameDecoding(SHAPE).decode(Bytes.empty()));
    assertInstanceOf(NotAReading.class, new FrameDecoding(SHAPE).decode(Bytes.ofHex("aa550102")));
  }

  @Test
  void checkSumsAreThePublishedOnes() {
    // Check value of CRC-16/MODBUS over the digits 1 to 9: 0x4B37, low byte first on the line
    // (catalogue of parametrised CRC algorithms, reveng). The frame: Modbus over serial line,
    // request of two registers, a common example.
    Bytes digits = Bytes.of("123456789".getBytes(StandardCharsets.US_ASCII));
    assertEquals("374b", CheckSum.CRC16.closing(digits).slice(9, 11).hex());
    assertTrue(CheckSum.CRC16.fits(Bytes.ofHex("01040000000271cb")));
    // NMEA's exclusive or of the same digits is 0x31: worked by hand.
    assertEquals("31", CheckSum.XOR.closing(digits).slice(9, 10).hex());
    assertEquals("dd", CheckSum.SUM.closing(digits).slice(9, 10).hex());
  }

  /**
   * Requests, replies and an exception of Modbus over serial line (functions 1, 3, 4, 6 and 16).
   * The frames of 10 06 and 01 01 as found in public examples, the others closed with the CRC
   * computed apart (polynomial A001 reflected, from FFFF, low byte first).
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "01030000000ac5cd",
        "010300000001840a",
        "01040000000271cb",
        "01040441400c4a6a9b",
        "1103006b00037687",
        "110306ae415652434049ad",
        "1106000100039a9b",
        "11100001000204000a0102c6f0",
        "1006020200036af2",
        "010100000002bdcb",
        "01010102d049",
        "018302c0f1"
      })
  void checkSumsOfModbusFramesFit(String hex) {
    Bytes frame = Bytes.ofHex(hex);
    assertTrue(CheckSum.CRC16.fits(frame));
    Bytes body = frame.slice(0, frame.length() - 2);
    assertEquals(hex, CheckSum.CRC16.closing(body).hex());
    assertFalse(CheckSum.CRC16.fits(body.plus(Bytes.ofHex("0000"))));
  }

  @Test
  void aShapeThatCannotBeIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new FrameShape(Bytes.empty(), 8, CheckSum.NONE, 0, ByteOrder.BIG, TENTHS));
    assertThrows(
        IllegalArgumentException.class,
        () -> new FrameShape(Bytes.ofHex("aa"), 5, CheckSum.SUM, 1, ByteOrder.BIG, TENTHS));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new FrameShape(
                Bytes.ofHex("aa"),
                8,
                CheckSum.NONE,
                1,
                ByteOrder.BIG,
                new PresentationFormat(GattFormat.UTF8, 0, Unit.METRE)));
  }
}
