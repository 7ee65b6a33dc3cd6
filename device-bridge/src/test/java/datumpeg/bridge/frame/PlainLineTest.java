package datumpeg.bridge.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlainLineTest {
  private static Bytes latin(String line) {
    return Bytes.of(line.getBytes(StandardCharsets.ISO_8859_1));
  }

  @ParameterizedTest
  @ValueSource(strings = {"20.118 m", "20118", "-0.35\u00B0", "+1.5mm", "7,25  m", "-0.00 m"})
  void plainLinesAreTaken(String line) {
    assertNotNull(PlainLine.read(latin(line), Unit.METRE), line);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "-", ".5", "5.", "1.2.3", "12 ft 6 in", "12 mm/m", "1234567890123456", "5 V"})
  void whatIsNotPlainIsLeftToTheGeneralReading(String line) {
    assertNull(PlainLine.read(latin(line), Unit.METRE), line);
  }

  /** Two routes to one value: without tokens, and with them and the library's own parsing. */
  @Property(tries = 20_000, seed = "20260302")
  void theGeneralReadingSaysTheSame(@ForAll("nearlyPlain") String text) {
    List<Bytes> lines = new ArrayList<>(List.of(latin(text)));
    lines.add(Bytes.of(text.getBytes(StandardCharsets.UTF_8)));
    for (Bytes line : lines) {
      Measured plain = PlainLine.read(line, Unit.MILLIMETRE);
      if (plain != null) {
        assertEquals(new GeneralTextLine(Unit.MILLIMETRE).decodeTokens(line), plain, text);
      }
    }
  }

  @Provide
  Arbitrary<String> nearlyPlain() {
    Arbitrary<String> digits = Arbitraries.strings().numeric().ofMinLength(0).ofMaxLength(9);
    Arbitrary<String> number =
        Combinators.combine(
                Arbitraries.of("", "", "-", "+", " ", "- "),
                digits,
                Arbitraries.of("", ".", ",", ". "),
                digits)
            .as((sign, whole, mark, parts) -> sign + whole + mark + parts);
    return Combinators.combine(
            number,
            Arbitraries.of("", " ", "  ", "\t"),
            Arbitraries.of("", "m", "mm", "\u00B0", "M", "cm", "mm/m", "m m", "ft", "\u00F8", "m "))
        .as((value, blank, unit) -> value + blank + unit);
  }
}
