package datumpeg.bridge.meter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.Reason;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.meter.MeterStream.Message;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class MeterStreamTest {

  private static Bytes bytes(String text) {
    return Bytes.of(text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void readingsAreFoundBetweenGarbageAndEverythingIsCounted() {
    MeterStream stream = new MeterStream(MeterProfiles.GENERAL_TEXT_LINE);
    String garbage = "\u0000\u0007~@@\r\nBATT 80%\r\n> D\r\n1 2 3\r\n" + "x".repeat(5000) + "\r\n";
    List<Message> messages =
        stream.accept(bytes(garbage + "5.25 m\r\n" + garbage + "-7 mm\r\n12"), Chunk.ONLY_CHANNEL);
    List<Double> values =
        messages.stream()
            .map(Message::decoded)
            .filter(Measured.class::isInstance)
            .map(decoded -> ((Measured) decoded).siValue())
            .toList();
    assertEquals(List.of(5.25, -0.007), values);
    assertEquals(
        new MeterStream.Counts(
            2, Map.of(Reason.ECHO, 4L, Reason.STATUS, 2L, Reason.AMBIGUOUS, 2L), 2, 0),
        stream.counts());
    assertEquals(bytes("12"), stream.lost());
    assertEquals(1, stream.counts().incomplete());
    assertTrue(stream.lost().isEmpty());
    assertEquals(1, stream.counts().incomplete());
  }

  @Property(tries = 300, seed = "20260302")
  void garbageBetweenLinesNeverChangesAReading(@ForAll byte[] garbage) {
    MeterStream stream = new MeterStream(MeterProfiles.GENERAL_TEXT_LINE);
    stream.accept(Bytes.of(garbage), Chunk.ONLY_CHANNEL);
    stream.accept(bytes("\n"), Chunk.ONLY_CHANNEL);
    List<Message> messages = stream.accept(bytes("12.345 m\n"), Chunk.ONLY_CHANNEL);
    assertEquals(12.345, assertInstanceOf(Measured.class, messages.get(0).decoded()).siValue());
  }
}
