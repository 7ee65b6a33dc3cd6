package datumpeg.desktop.findings;

import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.frame.ByteRows;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.jobs.Movement;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import datumpeg.desktop.background.OneWork;
import datumpeg.desktop.text.Figures;
import datumpeg.desktop.text.Words;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.function.Consumer;

/** The rows of a record file, read and written off the thread of the screen. Immutable. */
public final class RecordRows implements StoredRows {
  private static final Logger LOG = System.getLogger(RecordRows.class.getName());

  private final Path file;
  private final String version;
  private final Clock clock;
  private final ZoneId zone;
  private final Words words;
  private final Executor screen;

  /**
   * Rows of the record.
   *
   * @param version of the program, for the record
   * @param screen hands over to the thread of the screen
   */
  public RecordRows(
      Path file, String version, Clock clock, ZoneId zone, Words words, Executor screen) {
    this.file = file;
    this.version = version;
    this.clock = clock;
    this.zone = zone;
    this.words = words;
    this.screen = screen;
  }

  @Override
  public void readings(String job, List<String> ids, Consumer<Behind> found) {
    new OneWork(
            "readings behind a number",
            () -> {
              Behind behind = behind(job, ids);
              screen.execute(() -> found.accept(behind));
            },
            defect -> screen.execute(() -> found.accept(new Behind(List.of(), told(defect)))))
        .start();
  }

  private Behind behind(String job, List<String> ids) {
    Set<String> wanted = new HashSet<>(ids);
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.READ)) {
      return new Behind(
          record.log(StoredJob.find(record, job)).readings().stream()
              .map(stored -> stored.entry())
              .filter(entry -> wanted.contains(entry.id().toString()))
              .map(this::row)
              .toList(),
          "");
    }
  }

  private Row row(ReadingEntry entry) {
    String face = entry.face() == 0 ? "" : words.text("behind.face", entry.face());
    List<String> how = new ArrayList<>();
    how.add(Figures.minute(entry.readAt().toInstant(), zone));
    addIfSaid(how, entry.operator(), "behind.by");
    addIfSaid(how, entry.meter(), "behind.meter");
    addIfSaid(how, entry.link(), "behind.link");
    addIfSaid(how, entry.note(), "behind.note");
    return new Row(
        entry.id().toString(),
        (entry.value() + " " + entry.unit()).strip(),
        words.text(
            "behind.target", entry.target(), face, entry.round(), words.stage(entry.stage())),
        String.join(", ", how),
        entry.raw().isEmpty() ? "" : String.join("\n", ByteRows.of(Bytes.ofHex(entry.raw()))),
        entry.source());
  }

  private void addIfSaid(List<String> how, String value, String key) {
    if (!value.isEmpty()) {
      how.add(words.text(key, value));
    }
  }

  @Override
  public void moved(String job, String thing, String why, Consumer<String> told) {
    new OneWork(
            "moved",
            () -> {
              store(job, thing, why);
              screen.execute(() -> told.accept(""));
            },
            trouble -> screen.execute(() -> told.accept(told(trouble))))
        .start();
  }

  private void store(String job, String thing, String why) {
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.WRITE)) {
      Movement.store(record, job, thing, why, new SessionStart("", version, clock));
    }
  }

  private String told(Throwable trouble) {
    if (trouble instanceof FailureException) {
      return String.valueOf(trouble.getMessage());
    }
    LOG.log(Level.ERROR, "Rows of the record could not be read or written.", trouble);
    return words.text("window.defect", trouble.getClass().getSimpleName());
  }
}
