package datumpeg.bridge.jobfile;

import static java.util.Objects.requireNonNull;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.conform.LimitRow;
import datumpeg.analysis.conform.LimitRule;
import datumpeg.bridge.limits.LimitsTable;
import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.toml.TomlNode;
import datumpeg.bridge.toml.TomlNodes;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LimitLineTest {
  private static final List<String> NOT_OF_THE_RULE =
      List.of("source", "clause", "edition", "confidence", "note");

  private static LimitRule typed(String line) {
    JobDraft.Checked checked =
        JobDraft.of(JobTexts.LARKRISE)
            .with("tolerances.slab-level", JobDraft.Kind.LIMIT, line)
            .check();
    return checked
        .job()
        .map(job -> requireNonNull(job.tolerances().get("slab-level")).rule())
        .orElseThrow(() -> new AssertionError(line + ": " + checked));
  }

  private static String wrong(String line) {
    JobDraft.Checked checked =
        JobDraft.of(JobTexts.LARKRISE)
            .with("tolerances.slab-level", JobDraft.Kind.LIMIT, line)
            .check();
    return String.valueOf(checked.atEntries().get("tolerances.slab-level"));
  }

  /**
   * Each rule of the limits table that has more than one length, typed as the line it is told as.
   */
  @Test
  void everyRuleOfTheLimitsTableCanBeTyped() throws IOException {
    TomlNode.Entries rows = rows();
    int lines = 0;
    for (LimitRow row : LimitsTable.ofProgram().rows()) {
      TomlNode.Entries rule = (TomlNode.Entries) requireNonNull(rows.entries().get(row.id()));
      for (String other : NOT_OF_THE_RULE) {
        rule = rule.without(other);
      }
      if (!rule.entries().containsKey("limit")) {
        String line = LimitLine.of(rule).orElse(row.id() + " has no line");
        assertEquals(row.rule(), typed(line), line);
        lines++;
      }
    }
    assertTrue(lines > 30, lines + " lines");
  }

  private static TomlNode.Entries rows() throws IOException {
    Mistakes mistakes = new Mistakes();
    try (InputStream in = LimitsTable.class.getResourceAsStream("/datumpeg/limits.toml")) {
      String text = new String(requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
      return TomlNodes.read(text, "limits", mistakes);
    }
  }

  /** The words in which {@code limits list} tells the rows of the table are understood. */
  @Test
  void lineMayBeCopiedFromTheListOfLimits() {
    LimitsTable table = LimitsTable.ofProgram();
    assertEquals(
        table.find("din18202-opening").map(LimitRow::rule),
        Optional.of(
            typed("up to 1 m: 10 mm; up to 3 m: 12 mm; up to 6 m: 16 mm; not interpolated")));
    assertEquals(
        table.find("din18202-flatness-3").map(LimitRow::rule),
        Optional.of(
            typed(
                "at 0.1 m: 2 mm; at 1 m: 4 mm; at 4 m: 10 mm; at 10 m: 12 mm; at 15 m: 15 mm;"
                    + " linear between, to whole mm")));
    assertEquals(
        table.find("en1090-column-spacing-1").map(LimitRow::rule),
        Optional.of(typed("up to 5 m: 10 mm; beyond: 9 mm + 0.2 mm per m")));
  }

  @Test
  void commaBetweenDigitsIsADecimalMark() {
    assertEquals(0.0085, typed("up to 2,5 m: 8,5 mm, beyond: 12 mm").upperMetres(2.5), 1e-12);
    assertEquals(0.012, typed("up to 2,5 m: 8,5 mm, beyond: 12 mm").upperMetres(2.6), 1e-12);
  }

  @Test
  void whatIsWrongWithALineIsSaid() {
    assertTrue(
        wrong("up to 3 m 8 mm, beyond: 12 mm").contains("\"up to 3 m 8 mm\" is no step; expected"),
        wrong("up to 3 m 8 mm, beyond: 12 mm"));
    assertTrue(wrong("up to 3 m: 8 mm, at 6 m: 9 mm").contains("mixes"));
    assertTrue(wrong("up to 3 m: 8 mm, linear between").contains("mixes"));
    assertTrue(wrong("at 1 m: 8 mm + 2 mm per m").contains("mixes"));
    assertTrue(wrong("up to 6 m: 8 mm, up to 3 m: 9 mm").contains("ascending"));
    assertTrue(wrong("beyond: 0 mm").contains("0 mm"), wrong("beyond: 0 mm"));
    assertTrue(wrong("at 1 m: 8 mm, beyond: 9 mm").contains("needs a size for each step"));
    assertTrue(wrong("beyond").contains("is no step"), wrong("beyond"));
  }

  @Test
  void lineWithinQuotesIsNoEntryOfAJobFile() {
    String file =
        JobDraft.of(JobTexts.LARKRISE)
            .with("tolerances.slab-level", JobDraft.Kind.TEXT, "up to 3 m: 8 mm, beyond: 12 mm")
            .toml();
    String said = JobDraft.of(file).check().atEntries().toString();
    assertTrue(said.contains("which a job file spells out: { steps = ["), said);
  }

  @Test
  void tableThatNoLineStandsForIsNone() {
    for (String rule :
        List.of(
            "{ steps = [{ limit = \"12 mm\" }] }",
            "{ steps = [{ up_to = 3, limit = \"12 mm\" }], interpolate = \"none\" }",
            "{ pieces = [{ up_to = \"5 m\", constant = \"10 mm\" }] }",
            "{ upper = \"8 mm, 9\" }",
            "{}")) {
      JobDraft draft = JobDraft.of("[tolerances]\nslab-level = " + rule + "\n");
      assertTrue(draft.isTable("tolerances.slab-level"), rule);
    }
  }
}
