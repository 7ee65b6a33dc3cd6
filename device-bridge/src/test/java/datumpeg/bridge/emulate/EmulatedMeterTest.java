package datumpeg.bridge.emulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.emulate.EmulatedMeter.Chatter;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.meter.MeterStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class EmulatedMeterTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "METRES|12.34561|12.3456 m",
        "METRES|-0.5|-0.5000 m",
        "MILLIMETRES|12.34561|D: 12345.6 mm",
        "DECIMAL_COMMA|12.34561|12,3456 m",
        // 9.001125 m = 354.375 in = 29 ft 6 3/8 in (1 in = 0.0254 m, NIST SP 811)
        "FEET_INCH|9.001125|29' 6 3/8\"",
        "FEET_INCH|3.6576|12' 0\"",
        "FEET_INCH|3.6575|12' 0\"",
        "FEET_INCH|-0.0254|-0' 1\"",
        "FEET_INCH|0|0' 0\"",
        "DEGREES|0.0061435589670201|Tilt = +0.352°",
        "DEGREES|-0.0061435589670201|Tilt = -0.352°",
        "MILLIMETRES_PER_METRE|0.0035|+3.50 mm/m",
      })
  void aValueIsWrittenAsTheDialectWritesIt(Dialect dialect, double siValue, String line) {
    Bytes sent = new EmulatedMeter(dialect, Chatter.SILENT, 1).send(siValue);
    assertEquals(line, new String(sent.toArray(), StandardCharsets.UTF_8).strip());
  }

  @ParameterizedTest
  @EnumSource(Dialect.class)
  void whatAMeterSendsIsReadBackWithinHalfItsResolution(Dialect dialect) {
    EmulatedMeter meter = new EmulatedMeter(dialect, Chatter.TALKATIVE, 20260302);
    SplittableRandom random = new SplittableRandom(7);
    List<Double> sent = new ArrayList<>();
    for (int index = 0; index < 500; index++) {
      boolean angle = dialect.unit().dimension() == datumpeg.analysis.quantity.Dimension.ANGLE;
      sent.add(angle ? random.nextDouble(-0.2, 0.2) : random.nextDouble(0, 40));
    }
    MeterStream stream = new MeterStream(MeterProfiles.GENERAL_TEXT_LINE);
    List<Double> read = new ArrayList<>();
    for (Bytes piece : meter.inPieces(meter.sendAll(sent))) {
      for (MeterStream.Message message : stream.accept(piece, Chunk.ONLY_CHANNEL)) {
        if (message.decoded() instanceof Measured measured) {
          read.add(measured.siValue());
        }
      }
    }
    assertEquals(sent.size(), read.size());
    assertTrue(stream.counts().notReadings().size() > 1, "a talkative meter says other things too");
    for (int index = 0; index < sent.size(); index++) {
      assertEquals(sent.get(index), read.get(index), dialect.resolutionSi() * 0.5 + 1e-9);
    }
  }

  @Test
  void theSameSeedGivesTheSameBytesAndAnotherSeedOthers() {
    List<Double> values = List.of(1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0);
    Bytes first = new EmulatedMeter(Dialect.METRES, Chatter.TALKATIVE, 1).sendAll(values);
    assertEquals(first, new EmulatedMeter(Dialect.METRES, Chatter.TALKATIVE, 1).sendAll(values));
    assertNotEquals(first, new EmulatedMeter(Dialect.METRES, Chatter.TALKATIVE, 2).sendAll(values));
  }

  @Test
  void piecesTogetherAreTheWhole() {
    EmulatedMeter meter = new EmulatedMeter(Dialect.DEGREES, Chatter.SILENT, 3);
    Bytes sent = meter.send(0.01);
    Bytes joined = Bytes.empty();
    for (Bytes piece : meter.inPieces(sent)) {
      joined = joined.plus(piece);
    }
    assertEquals(sent, joined);
    assertEquals(List.of(), meter.inPieces(Bytes.empty()));
  }

  @Test
  void aValueThatIsNotFiniteIsRefused() {
    EmulatedMeter meter = new EmulatedMeter(Dialect.METRES, Chatter.SILENT, 1);
    assertThrows(IllegalArgumentException.class, () -> meter.send(Double.NaN));
  }
}
