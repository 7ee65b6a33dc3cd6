package datumpeg.analysis.report.writing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

final class MarkupTest {
  @Test
  void wordsAndAttributesAreEscaped() {
    assertEquals(
        "<b title=\"a&quot;&lt;&#39;\">1 &lt; 2 &amp; 3 &gt; 2</b>",
        new Markup().element("b", "1 < 2 & 3 > 2", "title", "a\"<'").written());
  }

  @Test
  void charactersThatXmlForbidsOrThatTurnTheWritingAreReplaced() {
    assertEquals("a\uFFFD\uFFFD\uFFFDb\tc", Markup.escaped("a\u0000\u001B\u2067b\tc"));
    assertEquals("\uFFFD", Markup.escaped("\uDC00"));
    assertEquals("\uD83D\uDE9C", Markup.escaped("\uD83D\uDE9C"));
  }

  @Test
  void anElementLeftOpenIsRefused() {
    assertThrows(IllegalStateException.class, () -> new Markup().open("p").written());
  }

  @Test
  void aStyleSheetThatCouldEndItselfIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Markup().styleSheet("a { } </style>"));
  }
}
