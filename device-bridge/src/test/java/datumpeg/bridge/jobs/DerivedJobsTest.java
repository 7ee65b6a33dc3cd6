package datumpeg.bridge.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.derived.DerivedStore;
import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.KeptOutcome;
import datumpeg.bridge.derived.ListedJob;
import datumpeg.bridge.derived.StageCount;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.jobfile.JobTexts;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.JobRevisionEntry;
import datumpeg.bridge.record.entry.MeterCheckEntry;
import datumpeg.bridge.record.entry.MovedEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import datumpeg.bridge.record.entry.VoidEntry;
import datumpeg.bridge.record.sqlite.DerivedFile;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DerivedJobsTest {
  private static final JobKey KEY = JobKey.local("larkrise-01");
  private static final JobKey OTHER = JobKey.local("larkrise-02");

  @TempDir Path folder;
  private final SessionStart start = new SessionStart("", "test", Clock.systemUTC());
  private final TimeOrderedIds ids = new TimeOrderedIds(Clock.systemUTC());
  private SiteRecord record;

  @BeforeEach
  void open() {
    record = SqliteRecords.open(folder.resolve("record.db"), SqliteRecords.Mode.WRITE);
    String toml = JobTexts.LARKRISE;
    store(KEY, JobRevisionEntry.of(1, "Hay shed", toml));
    store(OTHER, JobRevisionEntry.of(1, "Hay shed", toml.replace("larkrise-01", "larkrise-02")));
    store(KEY, distance("slab.A1-slab.A4", 18.011), distance("slab.A1-slab.B1", 9.001));
  }

  @AfterEach
  void close() {
    record.close();
  }

  private void store(JobKey key, Entry... entries) {
    try (RecordSession session = record.openSession(start)) {
      session.appendAll(key, List.of(entries));
    }
  }

  private ReadingEntry distance(String target, double metres) {
    return ReadingEntry.builder(ids.next(), "arrival", "distance", target)
        .value(String.format(Locale.ROOT, "%.4f", metres), "m", metres)
        .meter("laser", "", "")
        .readAt(OffsetDateTime.parse("2026-03-02T09:15:30+01:00"))
        .source("test")
        .build();
  }

  private DerivedStore kept() {
    return DerivedFile.open(DerivedFile.beside(folder.resolve("record.db")), "this analysis");
  }

  private static ListedJob of(List<ListedJob> jobs, JobKey key) {
    return jobs.stream().filter(job -> job.summary().key().equals(key)).findFirst().orElseThrow();
  }

  /** The sides that were measured, of the sides that the slab has. */
  private static StageCount arrival(JobOverview overview) {
    return overview.stages().get(0);
  }

  @Test
  void whatIsKeptIsWhatTheAnalysisSaysNow() {
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      assertFalse(of(jobs.jobs(), KEY).settled());
      JobOverview overview = jobs.settle(KEY);
      JobWork work = JobWork.of(StoredJob.load(record, "larkrise-01"));
      assertEquals(Overviews.of(work.stored().job(), work.findings(), work.holdPoints()), overview);
      List<KeptOutcome> outcomes = jobs.outcomes(KEY);
      assertEquals(work.findings().stages().get(0).outcomes().size(), outcomes.size());
      for (int i = 0; i < outcomes.size(); i++) {
        var found = work.findings().stages().get(0).outcomes().get(i);
        var again = outcomes.get(i).outcome();
        assertEquals(found.check() + found.target(), again.check() + again.target());
        assertEquals(found.deviation(), again.deviation());
        assertEquals(found.limits(), again.limits());
        assertEquals(found.verdict(), again.verdict());
        assertEquals(found.probability(), again.probability());
        assertEquals(found.nominal(), again.nominal());
        assertEquals(List.of("laser"), outcomes.get(i).meters());
        assertEquals(Instant.parse("2026-03-02T08:15:30Z"), outcomes.get(i).at());
      }
      assertEquals(1, arrival(overview).nonconforming() + arrival(overview).undecided());
    }
  }

  @Test
  void whatWasKeptIsThereWhenItIsOpenedAgain() {
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      jobs.jobs();
      jobs.settle(KEY);
      jobs.settle(OTHER);
    }
    try (DerivedStore store = kept()) {
      ListedJob job = of(new DerivedJobs(record, store).jobs(), KEY);
      assertTrue(job.settled());
      assertEquals("Larkrise", job.overview().orElseThrow().site());
      assertEquals(9, job.overview().orElseThrow().stages().size(), "standard stages and its own");
    }
  }

  @Test
  void everyKindOfNewRowUnsettlesItsJobAndNoOther() {
    ReadingEntry wrong = distance("slab.A1-slab.A4", 17.2);
    List<Entry> rows =
        List.of(
            wrong,
            new VoidEntry(wrong.id(), "misread"),
            new MovedEntry("column.A2", "pushed"),
            JobRevisionEntry.of(
                2, "Hay shed", JobTexts.LARKRISE.replace("Hay shed, Larkrise", "Byre, Larkrise")));
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      jobs.jobs();
      jobs.settle(KEY);
      jobs.settle(OTHER);
      for (Entry row : rows) {
        store(KEY, row);
        List<ListedJob> listed = jobs.jobs();
        assertFalse(of(listed, KEY).settled(), row.kind().word());
        assertTrue(of(listed, OTHER).settled(), row.kind().word());
        JobOverview overview = jobs.settle(KEY);
        JobWork fresh = JobWork.of(StoredJob.load(record, "larkrise-01"));
        assertEquals(
            Overviews.of(fresh.stored().job(), fresh.findings(), fresh.holdPoints()), overview);
        assertTrue(of(jobs.jobs(), KEY).settled(), row.kind().word());
      }
    }
  }

  /** Worked out again and again, row after row, a job is what it is worked out at once. */
  @Test
  void jobWorkedOutAgainIsWhatItIsWorkedOutAfresh() {
    ReadingEntry wrong = distance("slab.A1-slab.A4", 17.2);
    List<Entry> rows =
        List.of(
            wrong,
            distance("slab.A1-slab.B1", 9.001),
            new VoidEntry(wrong.id(), "misread"),
            new MeterCheckEntry(
                "laser",
                "known-distance",
                Map.of("known", List.of("10.000 m"), "reading", List.of("10.012 m", "10.012 m")),
                OffsetDateTime.parse("2026-03-05T07:00:00+01:00"),
                "",
                ""),
            new MovedEntry("column.A2", "pushed"),
            distance("slab.A1-slab.B1", 9.002),
            JobRevisionEntry.of(
                2, "Hay shed", JobTexts.LARKRISE.replace("Hay shed, Larkrise", "Byre, Larkrise")));
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      for (Entry row : rows) {
        store(KEY, row);
        jobs.work(OTHER);
        jobs.work(KEY);
        JobWork fresh = JobWork.of(StoredJob.load(record, "larkrise-01"));
        JobWork again = jobs.work(KEY);
        assertEquals(fresh.findings(), again.findings(), row.kind().word());
        assertEquals(fresh.earlier(), again.earlier(), row.kind().word());
        assertEquals(fresh.holdPoints(), again.holdPoints(), row.kind().word());
        assertEquals(fresh.history(), again.history(), row.kind().word());
      }
    }
  }

  @Test
  void voidUnderAnotherJobUnsettlesTheJobOfItsReading() {
    ReadingEntry wrong = distance("slab.A1-slab.A4", 17.2);
    store(KEY, wrong);
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      jobs.jobs();
      jobs.settle(KEY);
      store(OTHER, new VoidEntry(wrong.id(), "misread"));
      assertFalse(of(jobs.jobs(), KEY).settled());
    }
  }

  /** A check of a meter may put readings of any job of the organisation in doubt. */
  @Test
  void aMetersCheckUnsettlesEveryJobOfItsOrganisation() {
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      jobs.jobs();
      jobs.settle(KEY);
      jobs.settle(OTHER);
      store(
          KEY,
          new MeterCheckEntry(
              "laser",
              "known-distance",
              Map.of("known", List.of("10.000 m"), "reading", List.of("10.012 m", "10.012 m")),
              OffsetDateTime.parse("2026-03-05T07:00:00+01:00"),
              "",
              ""));
      assertFalse(of(jobs.jobs(), KEY).settled());
      assertFalse(of(jobs.jobs(), OTHER).settled());
      JobWork fresh = JobWork.of(StoredJob.load(record, "larkrise-01"));
      assertEquals(
          Overviews.of(fresh.stored().job(), fresh.findings(), fresh.holdPoints()),
          jobs.settle(KEY));
    }
  }

  @Test
  void anotherAnalysisBeginsWithNothing() {
    Path file = DerivedFile.beside(folder.resolve("record.db"));
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      jobs.jobs();
      jobs.settle(KEY);
    }
    try (DerivedStore store = DerivedFile.open(file, "a newer analysis")) {
      assertEquals(List.of(), store.jobs());
      assertFalse(of(new DerivedJobs(record, store).jobs(), KEY).overview().isPresent());
    }
  }

  /** A restored backup that was written to has other rows under the same numbers. */
  @Test
  void anotherRecordInItsPlaceIsListedAfresh() throws IOException {
    Path file = folder.resolve("record.db");
    Path backup = folder.resolve("backup.db");
    record.close();
    Files.copy(file, backup);
    record = SqliteRecords.open(file, SqliteRecords.Mode.WRITE);
    store(KEY, distance("slab.B1-slab.B4", 18.002));
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      jobs.jobs();
      jobs.settle(KEY);
      jobs.settle(OTHER);
    }
    record.close();
    Files.move(backup, file, StandardCopyOption.REPLACE_EXISTING);
    for (String end : List.of("-wal", "-shm")) {
      Files.deleteIfExists(folder.resolve("record.db" + end));
    }
    record = SqliteRecords.open(file, SqliteRecords.Mode.WRITE);
    store(KEY, distance("slab.B1-slab.B4", 18.5));
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      assertFalse(of(jobs.jobs(), KEY).settled());
      JobWork fresh = JobWork.of(StoredJob.load(record, "larkrise-01"));
      assertEquals(
          Overviews.of(fresh.stored().job(), fresh.findings(), fresh.holdPoints()),
          jobs.settle(KEY));
      assertTrue(of(jobs.jobs(), KEY).settled());
    }
  }

  /** Two windows on one record: the slower one must not hide what the faster one saw. */
  @Test
  void whoWorkedItOutFromFewerRowsDoesNotSettleIt() {
    try (DerivedStore slow = kept();
        DerivedStore fast = kept()) {
      DerivedJobs slower = new DerivedJobs(record, slow);
      slower.jobs();
      slower.settle(KEY);
      DerivedJobs faster = new DerivedJobs(record, fast);
      store(KEY, distance("slab.A1-slab.A4", 18.2));
      faster.jobs();
      JobOverview before = slower.settle(KEY);
      assertFalse(of(fast.jobs(), KEY).settled());
      assertEquals(before, faster.settle(KEY));
      assertTrue(of(fast.jobs(), KEY).settled());
    }
  }

  @Test
  void fileOfAnotherProgramIsLeftAloneAndMemoryServes() throws IOException {
    Path file = DerivedFile.beside(folder.resolve("record.db"));
    byte[] bytes =
        "Minutes of the parish council, much longer than a header. "
            .repeat(4)
            .getBytes(StandardCharsets.UTF_8);
    Files.write(file, bytes);
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      jobs.jobs();
      jobs.settle(KEY);
      assertTrue(of(jobs.jobs(), KEY).settled());
    }
    assertEquals(new String(bytes, StandardCharsets.UTF_8), Files.readString(file));
  }

  @Test
  void brokenFileIsMadeAnew() throws IOException {
    Path file = DerivedFile.beside(folder.resolve("record.db"));
    try (DerivedStore store = kept()) {
      new DerivedJobs(record, store).jobs();
    }
    byte[] bytes = Files.readAllBytes(file);
    for (int i = 100; i < bytes.length; i++) {
      bytes[i] = 0x55;
    }
    Files.write(file, bytes);
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      jobs.jobs();
      jobs.settle(KEY);
    }
    try (DerivedStore store = kept()) {
      assertTrue(of(store.jobs(), KEY).overview().isPresent(), "it was kept in memory only");
    }
  }

  @Test
  void jobThatCannotBeMadeSenseOfIsKeptWithTheReason() {
    JobKey broken = JobKey.local("broken-1");
    store(broken, JobRevisionEntry.of(1, "Broken", "[job]\nid = \"broken-1\"\n"));
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      jobs.jobs();
      assertTrue(jobs.settle(broken).trouble().contains("building"), "the reason is not told");
      assertTrue(of(jobs.jobs(), broken).settled());
    }
  }

  @Test
  void outcomesOfAllJobsComeByJob() {
    try (DerivedStore store = kept()) {
      DerivedJobs jobs = new DerivedJobs(record, store);
      jobs.jobs();
      jobs.settle(KEY);
      jobs.settle(OTHER);
      assertEquals(jobs.outcomes(KEY), store.outcomes().get(KEY));
      assertEquals(List.of(KEY), new ArrayList<>(store.outcomes().keySet()));
    }
  }

  @Test
  void jobFilesOfTestsAreReadable() {
    assertEquals("larkrise-01", JobFile.read(JobTexts.LARKRISE, "x").identity().id());
  }
}
