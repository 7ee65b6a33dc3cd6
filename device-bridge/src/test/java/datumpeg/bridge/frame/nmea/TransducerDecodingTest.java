package datumpeg.bridge.frame.nmea;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.Decoded.Reason;
import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TransducerDecodingTest {

  /** Sentences as public log files show them, and two of our own; every checksum recomputed. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "$RPXDR,P,1.0280,B,0*7B",
        "$IIXDR,P,1.0136,B,BMP180,C,15.5,C,BMP180*58",
        "$IIXDR,P,1.0136,B,0,C,15.5,C,1,H,65.5,P,2*6B",
        "$HCXDR,A,171,D,PITCH,A,-37,D,ROLL,G,367,,MAGX,G,2420,,MAGY,G,-8984,,MAGZ*41",
        "$IIXDR,D,12.003,M,DIST,A,-0.25,D,TILT*67",
        "$IIXDR,A,0.12,D,PTCH,A,-0.05,D,ROLL*77",
        "$GPGLL,5057.970,N,00146.110,E,142451,A*27",
      })
  void findsTheChecksumRight(String line) {
    assertEquals(Sentence.Checksum.RIGHT, Sentence.of(line).orElseThrow().checksum());
    assertEquals(
        Sentence.Checksum.RIGHT,
        Sentence.of(
                line.substring(0, line.length() - 2)
                    + line.substring(line.length() - 2).toLowerCase(java.util.Locale.ROOT))
            .orElseThrow()
            .checksum(),
        "small letters");
    assertEquals(
        Sentence.Checksum.WRONG,
        Sentence.of(line.replaceFirst("[0-9]", "x")).orElseThrow().checksum(),
        "one character damaged");
  }

  @ParameterizedTest
  @CsvSource({"DIST, 12.003, 12.003", "TILT, -0.25, -0.004363323129985824"})
  void readsTheNamedTransducer(String name, String text, double siValue) {
    Measured measured =
        assertInstanceOf(Measured.class, decode(name, "$IIXDR,D,12.003,M,DIST,A,-0.25,D,TILT*67"));
    assertEquals(text, measured.valueText());
    assertEquals(siValue, measured.siValue(), 1e-15);
  }

  @Test
  void doesNotChooseBetweenTwo() {
    assertEquals(Reason.AMBIGUOUS, reason("", "$IIXDR,A,0.12,D,PTCH,A,-0.05,D,ROLL*77"));
    assertEquals(Reason.NO_NUMBER, reason("HEEL", "$IIXDR,A,0.12,D,PTCH,A,-0.05,D,ROLL*77"));
  }

  @Test
  void takesNoDamagedSentenceForAReading() {
    assertEquals(Reason.MALFORMED, reason("DIST", "$IIXDR,D,12.008,M,DIST,A,-0.25,D,TILT*67"));
    assertEquals(Reason.MALFORMED, reason("DIST", "$IIXDR,D,12.003,M,DIST,A,-0.25,D,TILT"));
    assertEquals(Reason.STATUS, reason("", "$GPGLL,5057.970,N,00146.110,E,142451,A*27"));
    assertEquals(Reason.UNREADABLE, reason("", "12.003 m"));
  }

  @Test
  void isTotal() {
    SplittableRandom random = new SplittableRandom(7);
    String letters = "$!*,XDRAM0123456789.-+ \u0000\u00ff";
    for (int run = 0; run < 20_000; run++) {
      StringBuilder line = new StringBuilder("$IIXDR,");
      for (int index = random.nextInt(40); index > 0; index--) {
        line.append(letters.charAt(random.nextInt(letters.length())));
      }
      decode("", line.substring(random.nextInt(3)));
    }
  }

  private static Reason reason(String name, String line) {
    return assertInstanceOf(NotAReading.class, decode(name, line)).reason();
  }

  private static Decoded decode(String name, String line) {
    return new TransducerDecoding(name)
        .decode(Bytes.of(line.getBytes(StandardCharsets.ISO_8859_1)));
  }
}
