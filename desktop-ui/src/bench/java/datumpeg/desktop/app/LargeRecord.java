package datumpeg.desktop.app;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.JobRevisionEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/** An invented record: so many jobs after one job file, each with so many readings. */
final class LargeRecord {
  private static final TimeOrderedIds IDS = new TimeOrderedIds(Clock.systemUTC());

  private LargeRecord() {}

  static void fill(Path file, Path jobFile, int jobs, int readings) throws IOException {
    String toml = Files.readString(jobFile);
    Job job = JobFile.read(toml, jobFile.toString());
    SplittableRandom random = new SplittableRandom(7);
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.WRITE)) {
      for (int number = 0; number < jobs; number++) {
        String id = String.format(Locale.ROOT, "invented-%04d", number);
        String own =
            toml.replaceFirst("(?m)^id = .*", "id = \"" + id + "\"")
                .replaceFirst("(?m)^crew = .*", "crew = \"Crew " + number % 7 + "\"")
                .replaceFirst("(?m)^site = .*", "site = \"Site " + number % 40 + "\"");
        List<Entry> rows = new ArrayList<>();
        rows.add(JobRevisionEntry.of(1, "Invented shed " + number, own));
        rows.addAll(readings(job, readings, random));
        try (RecordSession session =
            record.openSession(new SessionStart("bench", "bench", Clock.systemUTC()))) {
          session.appendAll(JobKey.local(id), rows);
        }
      }
    }
  }

  /** Readings of every target of the first stages in turn, until there are enough. */
  private static List<ReadingEntry> readings(Job job, int number, SplittableRandom random) {
    List<ReadingEntry> rows = new ArrayList<>();
    while (rows.size() < number) {
      for (Stage stage : job.stages()) {
        for (MeasuringList.Item item : MeasuringList.of(job.setOut(), stage).items()) {
          if (rows.size() < number && item.expectedSi().isPresent()) {
            rows.add(reading(stage, item.target(), item.expectedSi().getAsDouble(), random));
          }
        }
      }
    }
    return rows;
  }

  private static ReadingEntry reading(
      Stage stage, Target target, double nominal, SplittableRandom random) {
    boolean angle = target.quantity() == MeasuredQuantity.TILT;
    double value = nominal + (random.nextDouble() - 0.5) * (angle ? 0.002 : 0.006);
    String text = String.format(Locale.ROOT, angle ? "%.5f" : "%.4f", value);
    return ReadingEntry.builder(IDS.next(), stage.id(), target.quantity().text(), target.text())
        .value(text, angle ? "rad" : "m", Double.parseDouble(text))
        .meter(angle ? "" : "laser", "", "")
        .face(angle ? 1 + random.nextInt(2) : 0)
        .readAt(OffsetDateTime.parse("2026-03-02T09:15:30+01:00"))
        .operator("bench")
        .source("bench")
        .build();
  }
}
