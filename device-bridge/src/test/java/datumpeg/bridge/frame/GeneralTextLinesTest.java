package datumpeg.bridge.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Decoded.Measured;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class GeneralTextLinesTest {
  private static final int MOST = 24;

  /** A line and what it is. */
  private record Read(Bytes line, Decoded decoded) {}

  private static Bytes latin(String text) {
    return Bytes.of(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  private static List<Read> read(GeneralTextLines lines, Bytes bytes) {
    List<Read> read = new ArrayList<>();
    lines.accept(
        bytes, (among, from, to, decoded) -> read.add(new Read(among.slice(from, to), decoded)));
    return read;
  }

  /** The other route: cut first, then each line by tokens, nothing remembered. */
  private static List<Read> byTokens(Bytes bytes, Unit unit) {
    GeneralTextLine decoding = new GeneralTextLine(unit);
    return new TextLineFramer(MOST)
        .accept(bytes).stream().map(line -> new Read(line, decoding.decodeTokens(line))).toList();
  }

  private static void assertSameWhereverCut(Bytes bytes, int cut) {
    GeneralTextLines atOnce = new GeneralTextLines(MOST, Unit.MILLIMETRE);
    List<Read> expected = byTokens(bytes, Unit.MILLIMETRE);
    assertEquals(expected, read(atOnce, bytes));
    GeneralTextLines inTwo = new GeneralTextLines(MOST, Unit.MILLIMETRE);
    List<Read> found = new ArrayList<>(read(inTwo, bytes.slice(0, cut)));
    found.addAll(read(inTwo, bytes.slice(cut, bytes.length())));
    assertEquals(expected, found);
    assertEquals(atOnce.overflowCount(), inTwo.overflowCount());
    assertEquals(atOnce.discardPending(), inTwo.discardPending());
  }

  @Test
  void everySplitPointGivesTheSameReadings() {
    List<String> lines =
        List.of(
            "12.345 m",
            "12.346 m",
            "-2.345 m",
            "+2.345 m",
            "12,345 m\r",
            "1.5mm\n",
            "0.35\u00B0",
            "0.36\u00B0",
            "0.37\u00C2\u00B0",
            "20118",
            "20119",
            "20119.",
            ":0119",
            "12345678.901 m",
            "9.999                           m",
            "29' 6 3/8\"",
            "BATT 80 %",
            "7.000 m",
            "7.00/ m",
            "7.00: m",
            "7.002 m");
    for (String end : List.of("\r\n", "\n", "\r")) {
      Bytes bytes = latin(String.join(end, lines));
      for (int cut = 0; cut <= bytes.length(); cut++) {
        assertSameWhereverCut(bytes, cut);
      }
    }
  }

  /** A line that looks like the one before, but for any one byte: digit, mark, blank, unit, end. */
  @Test
  void oneOtherByteInALineLikeTheOneBeforeIsSeen() {
    String before = "-12.345 mm\r\n";
    for (int place = 0; place < before.length(); place++) {
      for (int value = 0; value < 256; value++) {
        StringBuilder text = new StringBuilder(before).append(before).append(before);
        text.setCharAt(before.length() + place, (char) value);
        assertEquals(
            byTokens(latin(text.toString()), Unit.METRE),
            read(new GeneralTextLines(MOST, Unit.METRE), latin(text.toString())));
      }
    }
  }

  @Property(tries = 2_000, seed = "20260302")
  void aMetersLinesAreReadAsCutAndByTokens(
      @ForAll("streams") String text, @ForAll @IntRange(max = 1_000) int cut) {
    Bytes bytes = latin(text);
    assertSameWhereverCut(bytes, Math.min(cut, bytes.length()));
  }

  @Property(tries = 500, seed = "20260302")
  void anyBytesAreReadAsCutAndByTokens(
      @ForAll @Size(max = 200) byte[] content, @ForAll @IntRange(max = 200) int cut) {
    assertSameWhereverCut(Bytes.of(content), Math.min(cut, content.length));
  }

  /** Runs of lines that look alike, as one meter sends them, and what stands between. */
  @Provide
  Arbitrary<String> streams() {
    Arbitrary<String> whole = Arbitraries.strings().numeric().ofMinLength(1).ofMaxLength(3);
    Arbitrary<String> parts = Arbitraries.strings().numeric().ofMaxLength(5);
    Arbitrary<String> ends = Arbitraries.of("\r\n", "\r\n", "\r\n", "\r", "\n", "\r\r\n");
    Arbitrary<String> units =
        Arbitraries.of(" m", " m", "m", " mm", "", "\u00B0", " \u00C2\u00B0", " ft", "  m", " m ");
    Arbitrary<String> line =
        Combinators.combine(
                Arbitraries.of("", "", "", "-", "+", "D1 "),
                whole,
                Arbitraries.of(".", ".", ",", ""),
                parts,
                units,
                ends)
            .as((sign, digits, mark, rest, unit, end) -> sign + digits + mark + rest + unit + end);
    return line.list().ofMaxSize(30).map(lines -> String.join("", lines));
  }

  @Test
  void aValueKeepsItsTextAsSent() {
    List<Read> read = read(new GeneralTextLines(MOST, Unit.METRE), latin("+07,50 m\n+07,51 m\n"));
    assertEquals("+07,50", ((Measured) read.get(0).decoded()).valueText());
    assertEquals("+07,51", ((Measured) read.get(1).decoded()).valueText());
    assertEquals(new Measured("+07,51", Unit.METRE, 7.51), read.get(1).decoded());
    assertEquals(
        new Measured("+07,51", Unit.METRE, 7.51).hashCode(), read.get(1).decoded().hashCode());
  }

  @Test
  void aMaximumBelowOneIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new GeneralTextLines(0, Unit.METRE));
  }
}
