package datumpeg.desktop.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import datumpeg.desktop.app.SampleJob;
import datumpeg.desktop.findings.FindingsPage.Behind;
import datumpeg.desktop.findings.FindingsPage.CauseCard;
import datumpeg.desktop.source.RecordFollower;
import datumpeg.desktop.source.SiteRecordOpening;
import datumpeg.desktop.text.Words;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a number to the bytes behind it, and from a remedy to its next round, on a real record. */
class FindingsRowsTest {
  private final Path file;
  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private final List<String> measured = new ArrayList<>();
  private final FindingsViewModel model;

  FindingsRowsTest(@TempDir Path folder) {
    file = folder.resolve("site.db");
    SampleJob sample = SampleJob.of("larkrise-01", file);
    sample.steps().subList(0, 4).forEach(sample::run);
    Words words = Words.of(Locale.ROOT);
    model =
        new FindingsViewModel(
            words,
            new RecordRows(file, "test", Clock.systemUTC(), ZoneOffset.UTC, words, screen::add),
            (job, stage) -> measured.add(job + " " + stage));
    model.choose("larkrise-01", "lift");
    follow();
  }

  private void follow() {
    try (RecordFollower follower =
        new RecordFollower(
            "site.db", new SiteRecordOpening(file), Clock.systemUTC(), model::show)) {
      follower.preferred("larkrise-01");
      follower.turn();
    }
  }

  private FindingsPage.ShownStage shown() {
    return model.page().get().shown().orElseThrow();
  }

  private void until(BooleanSupplier holds) {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!holds.getAsBoolean()) {
      try {
        Runnable next = screen.poll(100, TimeUnit.MILLISECONDS);
        if (next != null) {
          next.run();
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      assertTrue(System.nanoTime() < end, () -> "it did not come about: " + model.page().get());
    }
  }

  @Test
  void anOutcomeOpensTheReadingsBehindItDownToTheirBytes() {
    OutcomeRow lean =
        shown().outcomes().stream()
            .filter(row -> row.target().equals("A3/across"))
            .findFirst()
            .orElseThrow();
    assertFalse(lean.readingIds().isEmpty());
    model.open(lean);
    until(() -> model.page().get().behind().filter(now -> !now.rows().isEmpty()).isPresent());
    Behind behind = model.page().get().behind().orElseThrow();
    assertTrue(behind.title().startsWith("Behind Column plumb A3/across"), behind.title());
    StoredRows.Row row = behind.rows().get(0).row();
    assertTrue(row.bytes().matches("(?s)([0-9a-f]{2} )+.*"), row.bytes());
    assertTrue(row.source().contains("lift.capture.jsonl line "), row.source());
    assertTrue(row.how().contains("over serial:"), row.how());
    model.closeBehind();
    assertTrue(model.page().get().behind().isEmpty());
  }

  @Test
  void aRemedyThatIsDoneBeginsANewRoundAndLeadsToMeasuring() {
    CauseCard cause =
        shown().causes().stream()
            .filter(card -> card.things().contains("column.A3"))
            .findFirst()
            .orElseThrow();
    model.done("column.A3", cause.action());
    until(() -> !measured.isEmpty());
    assertEquals(List.of("larkrise-01 lift"), measured);
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.READ)) {
      StoredJob job = StoredJob.load(record, "larkrise-01");
      assertEquals("column.A3", job.moved().get(0).text());
    }
    follow();
    assertTrue(
        shown().outcomes().stream()
            .anyMatch(row -> row.target().startsWith("A3/") && row.verdict().equals("stale")));
  }

  @Test
  void whatCannotBeMovedIsSaidAndNothingIsStored() {
    model.done("column.Z9", "for plumb");
    until(() -> !model.page().get().trouble().isEmpty());
    assertTrue(model.page().get().trouble().contains("Z9"), model.page().get().trouble());
    model.done("column.A3", " ");
    until(() -> model.page().get().trouble().startsWith("A reason is needed"));
    assertEquals(List.of(), measured);
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.READ)) {
      assertEquals(List.of(), StoredJob.load(record, "larkrise-01").moved());
    }
  }

  @Test
  void everyStageHasItsDrawings() {
    List<String> lift =
        shown().toDraw().drawings().stream().map(drawing -> drawing.title()).toList();
    assertTrue(
        lift.containsAll(List.of("Where to look", "Plumb of the columns", "Columns in elevation")),
        lift.toString());
    model.chooseStage("arrival");
    List<String> arrival =
        shown().toDraw().drawings().stream().map(drawing -> drawing.title()).toList();
    assertTrue(
        arrival.containsAll(
            List.of(
                "The slab in plan",
                "Where to snap the lines",
                "Levels of the slab",
                "Levels under the bases")),
        arrival.toString());
  }
}
