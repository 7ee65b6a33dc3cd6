package datumpeg.bridge.limits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.conform.LimitRow;
import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.toml.TomlText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Holds the arithmetic of the rules, not that any standard says so. */
class LimitsTableTest {
  private final LimitsTable limits = LimitsTable.ofProgram();

  /**
   * Sizes and limits in mm. Both overall-length rules and both spacing rules meet at their joints.
   */
  @ParameterizedTest
  @CsvSource({
    "as4100-plumb, 3000, 6.0",
    "as4100-plumb, 4200, 8.4",
    "as4100-plumb, 6000, 12.0",
    "as4100-plumb, 12500, 25.0",
    "as4100-plumb, 15000, 25.0",
    "as4100-overall-length, 30000, 20.0",
    "as4100-overall-length, 36000, 21.5",
    "as4100-overall-length, 48000, 24.5",
    "en1090-column-spacing-1, 4000, 10.0",
    "en1090-column-spacing-1, 5000, 10.0",
    "en1090-column-spacing-1, 5000.001, 10.0",
    "en1090-column-spacing-1, 6000, 10.2",
    "en1090-column-spacing-1, 8000, 10.6",
    "en1090-column-spacing-1, 9000, 10.8",
    "en1090-column-spacing-2, 4000, 7.0",
    "en1090-column-spacing-2, 5000, 7.0",
    "en1090-column-spacing-2, 5000.001, 7.0",
    "en1090-column-spacing-2, 6000, 7.2",
    "en1090-column-spacing-2, 8000, 7.6",
    "en1090-column-spacing-2, 9000, 7.8",
    "en1090-overall-length-1, 24000, 20.0",
    "en1090-overall-length-1, 30000, 20.0",
    "en1090-overall-length-1, 30000.001, 20.0",
    "en1090-overall-length-1, 36000, 21.5",
    "en1090-overall-length-1, 48000, 24.5",
    "en1090-overall-length-1, 60000, 27.5",
    "en1090-overall-length-1, 250000, 75.0",
    "en1090-overall-length-1, 250000.001, 75.0",
    "en1090-overall-length-2, 24000, 16.0",
    "en1090-overall-length-2, 30000.001, 16.0",
    "en1090-overall-length-2, 36000, 17.2",
    "en1090-overall-length-2, 48000, 19.6",
    "en1090-overall-length-2, 60000, 22.0",
    "en1090-overall-length-2, 250000, 60.0",
    "en1090-overall-length-2, 250000.001, 60.0",
    "en1090-plumb-single-storey, 6000, 20.0",
    "en1090-portal-mean, 6000, 12.0",
    "en1090-base-position-1, 1, 10.0",
  })
  void ruleGivesItsLimitBothWays(String id, double sizeMillimetres, double limitMillimetres) {
    LimitRow row = limits.find(id).orElseThrow();
    double size = sizeMillimetres / 1000;
    assertEquals(limitMillimetres / 1000, row.rule().upperMetres(size), 1e-9);
    assertEquals(-limitMillimetres / 1000, row.rule().lowerMetres(size), 1e-9);
  }

  @Test
  void foundationMayLieLowerThanHigher() {
    LimitRow row = limits.find("en1090-foundation-level").orElseThrow();
    assertEquals(-0.015, row.rule().lowerMetres(1));
    assertEquals(0.005, row.rule().upperMetres(1));
  }

  @Test
  void everyRowSaysThatNobodyComparedItWithTheDocument() {
    assertFalse(limits.rows().isEmpty());
    for (LimitRow row : limits.rows()) {
      assertFalse(row.seen(), row.id());
      assertTrue(row.printedSource().endsWith(", verify against your copy"), row.id());
      assertEquals(row.printedSource(), row.tolerance().source());
      assertFalse(row.clause().isBlank() || row.edition().isBlank() || row.note().isBlank());
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "limit = \"6 mm\" ¶ ratio = 500 | A limit is either 'limit'",
        "lower = \"-6 mm\" | A limit is either 'limit'",
        "cap = \"6 mm\" | A limit is either 'limit'",
        "pieces = [] | A limit in pieces needs at least one piece",
        "pieces = [{ up_to = \"5 m\" }, { up_to = \"4 m\" }] | must end at ascending sizes",
        "pieces = [{ upto = \"5 m\" }] | the nearest is 'up_to'",
        "limit = \"-6 mm\" | expected more than 0",
      })
  void ruleThatSaysNothingOrTooMuchIsAMistake(String rule, String expected) {
    Mistakes mistakes = new Mistakes();
    String text =
        "[row]\n"
            + rule.replace('¶', '\n')
            + "\nsource = \"a\"\nclause = \"b\"\nedition = \"c\"\nseen = true\nnote = \"d\"\n";
    LimitsTable read = LimitsTable.read(TomlText.read(text, "limits.toml", mistakes));
    assertTrue(read.rows().isEmpty());
    assertTrue(mistakes.text().contains(expected), mistakes.text());
  }
}
