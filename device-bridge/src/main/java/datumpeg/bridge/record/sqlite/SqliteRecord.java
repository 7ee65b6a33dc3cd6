package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.record.DerivedNumber;
import datumpeg.bridge.record.Growth;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.JobSummary;
import datumpeg.bridge.record.Mark;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.Verification;
import datumpeg.bridge.record.entry.AcceptanceEntry;
import datumpeg.bridge.record.entry.CaptureEntry;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.EntryKind;
import datumpeg.bridge.record.entry.Head;
import datumpeg.bridge.record.entry.JobRevisionEntry;
import datumpeg.bridge.record.entry.MeterCheckEntry;
import datumpeg.bridge.record.entry.MovedEntry;
import datumpeg.bridge.record.entry.PhotoEntry;
import datumpeg.bridge.record.entry.ProfileEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.SignatureEntry;
import datumpeg.bridge.record.entry.TableEntry;
import datumpeg.bridge.record.entry.VoidEntry;
import java.nio.file.Path;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Answers questions about the record. */
final class SqliteRecord implements SiteRecord {
  private static final String OF_JOB = " FROM entry WHERE job = ? AND organisation = ?";

  // One statement, hence one moment: readings and the voids that name them cannot drift apart.
  private static final String LOG =
      "SELECT "
          + StoredRows.COLUMNS
          + OF_JOB
          + " AND kind IN ('reading', 'void', 'moved', 'table', 'capture', 'profile', 'signature',"
          + " 'acceptance', 'photo') UNION ALL SELECT "
          + StoredRows.COLUMNS
          + " FROM entry WHERE kind = 'void' AND NOT (job = ? AND organisation = ?)"
          + " AND json_extract(body, '$.reading') IN (SELECT json_extract(body, '$.id')"
          + OF_JOB
          + " AND kind = 'reading')";

  private static final String REVISION =
      "SELECT " + StoredRows.COLUMNS + OF_JOB + " AND kind = 'job-revision'";

  private static final String NEWEST_FIRST =
      " ORDER BY json_extract(body, '$.revision') DESC, at DESC, origin DESC, sequence DESC LIMIT 1";

  // Hops from job to job along the index: a record of a million readings has few jobs.
  private static final String METER_CHECKS =
      "WITH RECURSIVE jobs(job) AS (SELECT min(job) FROM entry WHERE job > '' UNION ALL"
          + " SELECT (SELECT min(job) FROM entry WHERE job > jobs.job) FROM jobs"
          + " WHERE jobs.job IS NOT NULL) SELECT "
          + StoredRows.COLUMNS
          + " FROM jobs CROSS JOIN entry USING (job)"
          + " WHERE organisation = ? AND kind = 'meter-check'";

  private static final String TABLE_KNOWN =
      "SELECT count(*)" + OF_JOB + " AND kind = 'table' AND json_extract(body, '$.sha256') = ?";

  private static final String ORGANISATIONS =
      "SELECT DISTINCT organisation FROM entry WHERE job = ? ORDER BY organisation";

  private final Database database;
  private final SqliteRecords.Mode mode;
  private final Runnable check;
  private final Optional<String> obstacle;
  private final StoredRows rows;

  /**
   * A record that is open.
   *
   * @param check whether what is in the file's place can be opened again
   * @param obstacle why nothing can be added
   */
  SqliteRecord(
      Database database, SqliteRecords.Mode mode, Runnable check, Optional<String> obstacle) {
    this.obstacle = obstacle;
    this.database = database;
    this.mode = mode;
    this.check = check;
    this.rows = new StoredRows(database.file());
  }

  @Override
  public List<JobSummary> jobs() {
    return database.read("list the jobs", JobSummaries::all);
  }

  @Override
  public Optional<JobSummary> summary(JobKey job) {
    return database.read("sum up the job " + job, inside -> JobSummaries.one(inside, job));
  }

  @Override
  public Growth grownSince(Mark mark) {
    return database.read("see what was added", inside -> Growths.since(inside, mark));
  }

  @Override
  public Optional<JobKey> findJob(String id) {
    List<JobKey> found =
        database.read(
            "look up the job " + id,
            inside -> {
              PreparedStatement statement = inside.statement(ORGANISATIONS);
              statement.setString(1, id);
              List<JobKey> keys = new ArrayList<>();
              try (ResultSet result = statement.executeQuery()) {
                while (result.next() && !id.isEmpty()) {
                  keys.add(new JobKey(result.getString(1), id));
                }
              }
              return keys;
            });
    if (found.size() > 1) {
      throw new InputException(
          "Several organisations have a job \"" + id + "\": " + found + "; name one of them.");
    }
    return found.stream().findFirst();
  }

  @Override
  public Optional<StoredEntry<JobRevisionEntry>> newestRevision(JobKey job) {
    return database.read(
        "read the newest job file of " + job,
        inside -> revision(forJob(inside.statement(REVISION + NEWEST_FIRST), job)));
  }

  @Override
  public Optional<StoredEntry<JobRevisionEntry>> revision(JobKey job, int number) {
    return database.read(
        "read revision " + number + " of " + job,
        inside -> {
          PreparedStatement statement =
              inside.statement(
                  REVISION + " AND json_extract(body, '$.revision') = ?" + NEWEST_FIRST);
          forJob(statement, job).setInt(3, number);
          return revision(statement);
        });
  }

  private Optional<StoredEntry<JobRevisionEntry>> revision(PreparedStatement statement)
      throws SQLException {
    try (ResultSet result = statement.executeQuery()) {
      return rows.readAll(result).stream().map(row -> row.as(JobRevisionEntry.class)).findFirst();
    }
  }

  @Override
  public JobLog log(JobKey job) {
    List<StoredEntry<Entry>> all =
        database.read(
            "read the job " + job,
            inside -> {
              PreparedStatement statement = forJob(inside.statement(LOG), job);
              for (int i = 3; i <= 6; i += 2) {
                statement.setString(i, job.job());
                statement.setString(i + 1, job.organisation());
              }
              try (ResultSet result = statement.executeQuery()) {
                return rows.readAll(result);
              }
            });
    all.sort(StoredEntry.BY_TIME);
    return new JobLog(
        job,
        only(all, EntryKind.READING, ReadingEntry.class),
        only(all, EntryKind.VOID, VoidEntry.class),
        only(all, EntryKind.MOVED, MovedEntry.class),
        only(all, EntryKind.TABLE, TableEntry.class),
        only(all, EntryKind.CAPTURE, CaptureEntry.class),
        only(all, EntryKind.PROFILE, ProfileEntry.class),
        only(all, EntryKind.SIGNATURE, SignatureEntry.class),
        only(all, EntryKind.ACCEPTANCE, AcceptanceEntry.class),
        only(all, EntryKind.PHOTO, PhotoEntry.class));
  }

  private static <E extends Entry> List<StoredEntry<E>> only(
      List<StoredEntry<Entry>> all, EntryKind kind, Class<E> type) {
    return all.stream().filter(row -> row.entry().kind() == kind).map(row -> row.as(type)).toList();
  }

  @Override
  public List<StoredEntry<MeterCheckEntry>> meterChecks(String organisation) {
    List<StoredEntry<Entry>> all =
        database.read(
            "read the checks of meters",
            inside -> {
              PreparedStatement statement = inside.statement(METER_CHECKS);
              statement.setString(1, organisation);
              try (ResultSet result = statement.executeQuery()) {
                return rows.readAll(result);
              }
            });
    all.sort(StoredEntry.BY_TIME);
    return only(all, EntryKind.METER_CHECK, MeterCheckEntry.class);
  }

  @Override
  public boolean tableKnown(JobKey job, String sha256) {
    return database.read(
        "look up a table of " + job,
        inside -> {
          PreparedStatement statement = forJob(inside.statement(TABLE_KNOWN), job);
          statement.setString(3, sha256);
          try (ResultSet result = statement.executeQuery()) {
            return result.getLong(1) > 0;
          }
        });
  }

  private static PreparedStatement forJob(PreparedStatement statement, JobKey job)
      throws SQLException {
    statement.setString(1, job.job());
    statement.setString(2, job.organisation());
    return statement;
  }

  @Override
  public RecordSession openSession(SessionStart start) {
    if (mode != SqliteRecords.Mode.WRITE) {
      throw new IllegalStateException("the record was opened for reading only");
    }
    return new SqliteSession(database, start);
  }

  @Override
  public Verification verify(DerivedNumber derived, List<Head> keptElsewhere) {
    return database.read(
        "verify what is stored", inside -> new ChainWalk(inside, derived).verify(keptElsewhere));
  }

  @Override
  public List<Head> heads() {
    return database.read("list the heads of the chains", ChainHeads::all);
  }

  @Override
  public long changeCounter() {
    return database.read(
        "see whether anything was added", inside -> inside.number("PRAGMA data_version"));
  }

  @Override
  public void letGo() {
    database.letGo();
  }

  @Override
  public void reopen() {
    database.letGo();
    check.run();
    database.reopen();
    try {
      SqliteRecords.requirePresentVersion(database);
    } catch (RuntimeException | Error e) {
      database.letGo();
      throw e;
    }
  }

  @Override
  public Optional<String> obstacle() {
    return obstacle;
  }

  @Override
  public Path file() {
    return database.file();
  }

  @Override
  public void close() {
    database.close();
  }
}
