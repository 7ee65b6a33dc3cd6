package datumpeg.bridge.exchange;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TableEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/**
 * What was stored of a table of readings: all its rows, in one transaction.
 *
 * @param sha256 of the file's bytes
 * @param readings in the order of the rows
 */
public record TableIntake(StoredJob job, String sha256, List<ReadingEntry> readings) {

  /** What to do with a table that was entered for the job before. */
  public enum Repeat {
    REFUSE,
    ENTER_AGAIN
  }

  public TableIntake {
    readings = List.copyOf(readings);
  }

  /**
   * Checks every row against the job's newest plan, then stores all of them. Returns only after the
   * commit.
   *
   * @param bytes of the CSV file
   * @param name the file's name as the person gave it
   * @throws TableException if anything in the table is wrong; then nothing was stored
   * @throws InputException if there is no such job, or the table was entered before
   */
  public static TableIntake take(
      SiteRecord record,
      String jobName,
      byte[] bytes,
      String name,
      Repeat repeat,
      SessionStart start) {
    StoredJob job = StoredJob.load(record, jobName);
    String sha256 = sha256(bytes);
    if (repeat == Repeat.REFUSE && record.tableKnown(job.key(), sha256)) {
      throw new InputException(
          "The file "
              + name
              + " was entered for the job "
              + job.key()
              + " before; nothing was stored. Use --again to enter it once more.");
    }
    List<ReadingEntry> readings = read(job, bytes, name, start);
    List<Entry> entries = new ArrayList<>();
    entries.add(new TableEntry(name, sha256));
    entries.addAll(readings);
    try (RecordSession session = record.openSession(start)) {
      session.appendAll(job.key(), entries);
    }
    return new TableIntake(job, sha256, readings);
  }

  private static List<ReadingEntry> read(
      StoredJob job, byte[] bytes, String name, SessionStart start) {
    Mistakes mistakes = new Mistakes();
    List<TableRow> rows = TableText.read(bytes, name, mistakes);
    RowReader reader =
        new RowReader(
            job.job(),
            job.moved(),
            OffsetDateTime.now(start.clock()),
            new TimeOrderedIds(start.clock()),
            name,
            mistakes);
    List<ReadingEntry> readings = new ArrayList<>();
    rows.forEach(row -> reader.read(row).ifPresent(readings::add));
    if (!mistakes.isEmpty()) {
      throw new TableException(mistakes);
    }
    return readings;
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
