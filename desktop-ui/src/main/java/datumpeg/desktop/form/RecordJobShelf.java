package datumpeg.desktop.form;

import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.jobs.JobIntake;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;

/** The job files in the record at a path. Immutable. */
public record RecordJobShelf(Path record, String programVersion, Clock clock) implements JobShelf {
  @Override
  public Optional<String> newest(String job) {
    if (!Files.exists(record)) {
      return Optional.empty();
    }
    try (SiteRecord open = SqliteRecords.open(record, SqliteRecords.Mode.READ)) {
      return open.jobs().stream()
          .map(summary -> summary.key())
          .filter(key -> key.toString().equals(job))
          .findFirst()
          .flatMap(key -> newest(open, key));
    }
  }

  @Override
  public String read(Path file) {
    return JobFile.text(file, String.valueOf(file.getFileName()));
  }

  @Override
  public Taken take(String text, String base) {
    JobFile file = JobFile.of(text, "job file");
    JobKey key = new JobKey(file.job().identity().organisation(), file.job().identity().id());
    try (SiteRecord open = SqliteRecords.open(record, SqliteRecords.Mode.WRITE)) {
      String newest = newest(open, key).orElse("");
      if (!newest.equals(base) && !newest.equals(text)) {
        return new Taken(key.toString(), 0, Outcome.OVERTAKEN, List.of());
      }
      JobIntake intake = JobIntake.take(open, file, new SessionStart("", programVersion, clock));
      return new Taken(
          key.toString(),
          intake.revision(),
          intake.isNew() ? Outcome.STORED : Outcome.NOTHING_NEW,
          intake.strays().stream().map(RecordJobShelf::sentence).toList());
    }
  }

  private static Optional<String> newest(SiteRecord open, JobKey key) {
    return open.newestRevision(key).map(stored -> stored.entry().toml());
  }

  private static String sentence(StoredJob.Stray stray) {
    return stray.stage() + ", " + stray.target() + ": " + stray.why();
  }
}
