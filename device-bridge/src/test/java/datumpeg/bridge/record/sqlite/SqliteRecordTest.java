package datumpeg.bridge.record.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.record.DerivedNumber;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.JobSummary;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.CaptureEntry;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.JobRevisionEntry;
import datumpeg.bridge.record.entry.MovedEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TableEntry;
import datumpeg.bridge.record.entry.VoidEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords.Mode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SqliteRecordTest {
  private static final String SHA = "ab".repeat(32);

  @TempDir Path folder;
  private SiteRecord record;

  @BeforeEach
  void open() {
    record = SqliteRecords.open(folder.resolve("deep/down/site.db"), Mode.WRITE);
  }

  @AfterEach
  void close() {
    record.close();
  }

  @Test
  void aStoredReadingComesBackAsItWentIn() {
    ReadingEntry reading =
        Rows.readingBuilder(12)
            .note("edge spalled, 3 mm — \"soft\"\n\u0001 ü 𝛼")
            .face(2)
            .round(3)
            .build();
    StoredEntry<ReadingEntry> stored;
    try (RecordSession session = record.openSession(Rows.START)) {
      stored = session.append(Rows.JOB, reading);
    }
    JobLog log = record.log(Rows.JOB);
    assertEquals(List.of(stored), log.readings());
    assertEquals(reading, log.readings().get(0).entry());
    assertEquals(2, stored.sequence());
    assertEquals(Rows.CLOCK.instant(), stored.at());
  }

  @Test
  void whatIsAppendedIsSeenByAnotherOpenRecordAtOnce() {
    Path file = folder.resolve("deep/down/site.db");
    try (SiteRecord reader = SqliteRecords.open(file, Mode.READ);
        RecordSession session = record.openSession(Rows.START)) {
      long before = reader.changeCounter();
      assertEquals(before, reader.changeCounter());
      session.append(Rows.JOB, Rows.reading(0));
      assertTrue(before != reader.changeCounter());
      assertEquals(1, reader.log(Rows.JOB).readings().size());
    }
  }

  @Test
  void merelyOpeningASessionWritesNothing() {
    try (RecordSession session = record.openSession(Rows.START)) {
      assertEquals(List.of(), session.appendAll(Rows.JOB, List.of()));
    }
    assertEquals(List.of(), record.heads());
    assertEquals(0, record.verify(DerivedNumber.NOT_CHECKED, List.of()).rowCount());
  }

  @Test
  void aJobKeepsItsRevisionsAndReadings() {
    try (RecordSession session = record.openSession(Rows.START)) {
      session.append(Rows.JOB, JobRevisionEntry.of(1, "Hay shed", "[job]\n"));
      session.append(Rows.JOB, Rows.reading(0));
      session.append(Rows.JOB, JobRevisionEntry.of(2, "Hay shed, Larkrise", "[job]\r\n# two\n"));
    }
    assertEquals(2, record.newestRevision(Rows.JOB).orElseThrow().entry().revision());
    assertEquals("[job]\n", record.revision(Rows.JOB, 1).orElseThrow().entry().toml());
    assertEquals(Optional.empty(), record.revision(Rows.JOB, 3));
    assertEquals(Optional.empty(), record.newestRevision(JobKey.local("other")));
    assertEquals(
        List.of(new JobSummary(Rows.JOB, "Hay shed, Larkrise", 2, 1, 0, Rows.CLOCK.instant())),
        record.jobs());
  }

  @Test
  void aVoidWithdrawsAReadingWhereverItStands() {
    ReadingEntry kept = Rows.reading(1);
    ReadingEntry withdrawn = Rows.reading(2);
    ReadingEntry withdrawnElsewhere = Rows.reading(3);
    try (RecordSession session = record.openSession(Rows.START)) {
      session.append(Rows.JOB, new VoidEntry(withdrawn.id(), "tape slipped"));
      session.appendAll(Rows.JOB, List.of(kept, withdrawn, withdrawnElsewhere));
      session.append(JobKey.local("other"), new VoidEntry(withdrawnElsewhere.id(), "wrong job"));
    }
    JobLog log = record.log(Rows.JOB);
    assertEquals(3, log.readings().size());
    assertEquals(Set.of(withdrawn.id(), withdrawnElsewhere.id()), log.voidedIds());
    assertEquals(List.of(kept), log.inForce().stream().map(StoredEntry::entry).toList());
  }

  @Test
  void tablesMovesAndCapturesAreListed() {
    List<Entry> entries =
        List.of(
            new TableEntry("slab.csv", SHA),
            new MovedEntry("column.A3", "packed"),
            new CaptureEntry("morning.jsonl", SHA, "arrival"));
    try (RecordSession session = record.openSession(Rows.START)) {
      session.appendAll(Rows.JOB, entries);
    }
    JobLog log = record.log(Rows.JOB);
    assertEquals(entries.get(0), log.tables().get(0).entry());
    assertEquals(entries.get(1), log.moves().get(0).entry());
    assertEquals(entries.get(2), log.captures().get(0).entry());
    assertTrue(record.tableKnown(Rows.JOB, SHA));
    assertFalse(record.tableKnown(Rows.JOB, "cd".repeat(32)));
    assertFalse(record.tableKnown(JobKey.local("other"), SHA));
  }

  @Test
  void allEntriesAreStoredOrNone() {
    ReadingEntry twice = Rows.reading(1);
    try (RecordSession session = record.openSession(Rows.START)) {
      assertThrows(
          RuntimeException.class,
          () -> session.appendAll(Rows.JOB, List.of(Rows.reading(0), twice, twice)));
      assertEquals(List.of(), record.heads());
      session.append(Rows.JOB, twice);
    }
    assertEquals(1, record.log(Rows.JOB).readings().size());
    assertTrue(record.verify(DerivedNumber.NOT_CHECKED, List.of()).isSound());
  }

  @Test
  void aClockSetBackDoesNotTurnTheOrderOfAChain() {
    SettableClock clock = new SettableClock(Instant.parse("2026-03-02T08:00:00Z"));
    ReadingEntry first = Rows.reading(1);
    ReadingEntry second = Rows.reading(2);
    try (RecordSession session = record.openSession(new SessionStart("", "0.1.0", clock))) {
      session.append(Rows.JOB, first);
      clock.advance(Duration.ofHours(-2));
      session.append(Rows.JOB, second);
    }
    assertEquals(
        List.of(first, second),
        record.log(Rows.JOB).readings().stream().map(StoredEntry::entry).toList());
  }

  @Test
  void aJobIsFoundByItsIdUnlessTwoOrganisationsHaveOne() {
    try (RecordSession session = record.openSession(Rows.START)) {
      session.append(Rows.JOB, Rows.reading(1));
      assertEquals(Optional.of(Rows.JOB), record.findJob("larkrise-01"));
      assertEquals(Optional.empty(), record.findJob("none"));
      assertEquals(Optional.empty(), record.findJob(""));
      session.append(new JobKey("Otter Sheds", "larkrise-01"), Rows.reading(2));
      InputException e = assertThrows(InputException.class, () -> record.findJob("larkrise-01"));
      Messages.assertSays(e, "Otter Sheds/larkrise-01");
    }
  }

  @Test
  void aRecordOpenedForReadingHasNoSessions() {
    try (SiteRecord reader = SqliteRecords.open(folder.resolve("deep/down/site.db"), Mode.READ)) {
      assertThrows(IllegalStateException.class, () -> reader.openSession(Rows.START));
    }
  }

  @Test
  void aClosedRecordLeavesOneFile() throws Exception {
    try (RecordSession session = record.openSession(Rows.START)) {
      session.append(Rows.JOB, Rows.reading(1));
    }
    record.close();
    try (var files = Files.list(folder.resolve("deep/down"))) {
      assertEquals(List.of("site.db"), files.map(file -> file.getFileName().toString()).toList());
    }
  }

  /** A clock that stands still until it is told. */
  private static final class SettableClock extends Clock {
    private Instant now;

    SettableClock(Instant now) {
      this.now = now;
    }

    void advance(Duration by) {
      now = now.plus(by);
    }

    @Override
    public Instant instant() {
      return now;
    }

    @Override
    public ZoneOffset getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(java.time.ZoneId zone) {
      return this;
    }
  }
}
