package datumpeg.bridge.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextLineFramerTest {

  private static Bytes bytes(String text) {
    return Bytes.of(text.getBytes(StandardCharsets.UTF_8));
  }

  private static List<String> texts(List<Bytes> frames) {
    return frames.stream().map(LineText::of).toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"\r", "\n", "\r\n", "\r\r\n", "\n\r"})
  void aLineEndsAtAnyTerminator(String terminator) {
    TextLineFramer framer = new TextLineFramer();
    List<Bytes> frames = framer.accept(bytes("12.345 m" + terminator + "9.5 m" + terminator));
    assertEquals(List.of("12.345 m", "9.5 m"), texts(frames));
    assertTrue(framer.pending().isEmpty());
  }

  @Test
  void everySplitPointGivesTheSameLines() {
    Bytes stream = bytes("1.0 m\r\n\u00000.35\u00B0\r29' 6 3/8\"\n\n\nBATT 80%\r\n7");
    List<Bytes> whole = new TextLineFramer().accept(stream);
    for (int first = 0; first <= stream.length(); first++) {
      for (int second = first; second <= stream.length(); second++) {
        TextLineFramer framer = new TextLineFramer();
        List<Bytes> frames = new ArrayList<>(framer.accept(stream.slice(0, first)));
        frames.addAll(framer.accept(stream.slice(first, second)));
        frames.addAll(framer.accept(stream.slice(second, stream.length())));
        assertEquals(whole, frames);
        assertEquals(bytes("7"), framer.pending());
      }
    }
    assertEquals(4, whole.size());
  }

  @Test
  void aLineOfTheMaximumPassesAndALongerOneIsDroppedAndCounted() {
    TextLineFramer framer = new TextLineFramer(8);
    List<Bytes> frames = framer.accept(bytes("12345678\n123456789\n\n1 m\n"));
    assertEquals(List.of("12345678", "1 m"), texts(frames));
    assertEquals(1, framer.overflowCount());
  }

  @Test
  void theEndOfALongLineIsNotTakenForALine() {
    TextLineFramer framer = new TextLineFramer(4);
    assertEquals(List.of(), framer.accept(bytes("xxxxxxxxxxx 12 m")));
    assertEquals(List.of(), framer.accept(bytes("\n")));
    assertEquals(List.of("13 m"), texts(framer.accept(bytes("13 m\n"))));
  }

  @Test
  void whatWasPendingIsReturnedAndForgottenWhenTheLinkIsLost() {
    TextLineFramer framer = new TextLineFramer();
    framer.accept(bytes("12.3"));
    assertEquals(bytes("12.3"), framer.discardPending());
    assertEquals(List.of("45 m"), texts(framer.accept(bytes("45 m\n"))));
  }

  @Test
  void aMaximumBelowOneIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new TextLineFramer(0));
  }

  @Property(tries = 300, seed = "20260302")
  void anyBytesInAnyPiecesGiveTheSameLinesInBoundedMemory(
      @ForAll @Size(max = 40) List<@Size(max = 60) byte[]> pieces) {
    TextLineFramer pieceByPiece = new TextLineFramer(16);
    List<Bytes> frames = new ArrayList<>();
    Bytes all = Bytes.empty();
    for (byte[] piece : pieces) {
      frames.addAll(pieceByPiece.accept(Bytes.of(piece)));
      all = all.plus(Bytes.of(piece));
      assertTrue(pieceByPiece.pending().length() <= 16);
    }
    TextLineFramer atOnce = new TextLineFramer(16);
    assertEquals(atOnce.accept(all), frames);
    assertEquals(atOnce.overflowCount(), pieceByPiece.overflowCount());
    for (Bytes frame : frames) {
      assertTrue(frame.length() >= 1 && frame.length() <= 16);
    }
  }
}
