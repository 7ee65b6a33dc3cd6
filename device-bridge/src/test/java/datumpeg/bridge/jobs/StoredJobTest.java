package datumpeg.bridge.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.quantity.QuantityFormatException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.jobfile.JobTexts;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.MovedEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import datumpeg.bridge.record.entry.VoidEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StoredJobTest {
  private static final JobKey KEY = JobKey.local("larkrise-01");

  @TempDir Path folder;
  private SiteRecord record;
  private final SessionStart start = new SessionStart("", "test", Clock.systemUTC());
  private final TimeOrderedIds ids = new TimeOrderedIds(Clock.systemUTC());

  @BeforeEach
  void open() throws IOException {
    record = SqliteRecords.open(folder.resolve("record.db"), SqliteRecords.Mode.WRITE);
    take(JobTexts.LARKRISE);
  }

  @AfterEach
  void close() {
    record.close();
  }

  private JobIntake take(String text) throws IOException {
    Path file = Files.writeString(folder.resolve("shed.toml"), text);
    return JobIntake.take(record, JobFile.load(file, "shed.toml"), start);
  }

  @Test
  void readingsInForceComeOutAsTheAnalysisWantsThem() {
    ReadingEntry tilt =
        ReadingEntry.builder(ids.next(), "lift", "tilt", "column.A2/along")
            .value("0,32", "deg", Math.toRadians(0.32))
            .face(1)
            .meter("spirit", "", "1.2 m")
            .readAt(OffsetDateTime.parse("2026-03-02T09:00:00+01:00"))
            .source("test")
            .build();
    ReadingEntry slip = distance("slab.A1-slab.A4", 17.004);
    try (RecordSession session = record.openSession(start)) {
      session.appendAll(KEY, List.of(tilt, slip, new VoidEntry(slip.id(), "wrong hook")));
      session.append(KEY, new MovedEntry("column.A2", "racked"));
    }
    StoredJob stored = StoredJob.load(record, "larkrise-01");
    assertEquals(1, stored.readings().size());
    Reading reading = stored.readings().get(0);
    assertEquals(tilt.id().toString(), reading.id());
    assertEquals(Math.toRadians(0.32), reading.valueSi());
    assertEquals(OptionalDouble.of(1.2), reading.upMetres());
    assertEquals("2026-03-02T08:00:00Z", reading.at().toString());
    assertEquals(List.of(new MovedThing("column", "A2")), stored.moved());
    assertTrue(stored.strays().isEmpty());
    assertEquals(stored.jobDigest(), record.newestRevision(KEY).orElseThrow().entry().sha256());
  }

  @Test
  void earlierRevisionStillHasThePointsItHad() throws IOException {
    try (RecordSession session = record.openSession(start)) {
      session.append(KEY, distance("slab.A1-slab.A4", 18.004));
    }
    JobIntake intake =
        take(
            JobTexts.LARKRISE
                .replace("A4 = [\"18 m\"", "C4 = [\"18 m\"")
                .replace("slab.A4", "slab.C4"));
    assertEquals(2, intake.revision());
    assertEquals(1, intake.strays().size());
    assertEquals(0, StoredJob.load(record, "larkrise-01").readings().size());
    assertEquals(1, StoredJob.load(record, "larkrise-01", 1).readings().size());
  }

  @Test
  void jobIsFoundByItsOrganisationToo() throws IOException {
    take(JobTexts.larkriseWith("organisation = \"local\"", "organisation = \"Copperfield\""));
    assertThrows(InputException.class, () -> StoredJob.load(record, "larkrise-01"));
    assertEquals(
        new JobKey("Copperfield", "larkrise-01"),
        StoredJob.load(record, "Copperfield/larkrise-01").key());
    assertEquals(KEY, StoredJob.find(record, "local/larkrise-01"));
  }

  @Test
  void unknownJobAndRevisionAreBadInput() {
    InputException job =
        assertThrows(InputException.class, () -> StoredJob.load(record, "larkrise-10"));
    assertTrue(
        String.valueOf(job.getMessage()).contains("the nearest is 'larkrise-01'"),
        job.getMessage());
    InputException revision =
        assertThrows(InputException.class, () -> StoredJob.load(record, "larkrise-01", 7));
    assertEquals("The job larkrise-01 has no revision 7; its newest is 1.", revision.getMessage());
  }

  @Test
  void valueIsWorkedOutFromItsText() {
    assertEquals(1, ReadingValue.si(MeasuredQuantity.ATTRIBUTE, "yes", ""));
    assertEquals(0, ReadingValue.si(MeasuredQuantity.ATTRIBUTE, "no", ""));
    assertEquals(9.002, ReadingValue.si(MeasuredQuantity.DISTANCE, "9,002", "m"));
    assertEquals(
        (29 * 12 + 6.375) * 0.0254,
        ReadingValue.si(MeasuredQuantity.DISTANCE, "29-6 3/8", "ft-in"),
        1e-12);
    assertEquals(Math.atan(0.002), ReadingValue.si(MeasuredQuantity.TILT, "1:500", ""), 1e-15);
    assertThrows(
        QuantityFormatException.class,
        () -> ReadingValue.si(MeasuredQuantity.DISTANCE, "2", "deg"));
    assertEquals(
        OptionalDouble.of(18.004), ReadingValue.again(distance("slab.A1-slab.A4", 18.004)));
  }

  private ReadingEntry distance(String target, double metres) {
    return ReadingEntry.builder(ids.next(), "arrival", "distance", target)
        .value(Double.toString(metres), "m", metres)
        .readAt(OffsetDateTime.parse("2026-03-02T09:00:00+01:00"))
        .source("test")
        .build();
  }
}
