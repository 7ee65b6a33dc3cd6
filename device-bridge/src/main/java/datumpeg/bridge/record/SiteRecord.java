package datumpeg.bridge.record;

import datumpeg.bridge.record.entry.Head;
import datumpeg.bridge.record.entry.JobRevisionEntry;
import datumpeg.bridge.record.entry.MeterCheckEntry;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * The measuring record of a site: rows are added and read, never altered. Thread-safe; several
 * processes of one machine may have the same record open. Whoever opened it closes it.
 *
 * <p>Every method may throw {@link RecordUnavailableException} (locked, read-only, full, gone) and
 * {@link RecordDamagedException} (what is stored cannot be made sense of).
 */
public interface SiteRecord extends AutoCloseable {

  /** Every job with at least one row, by organisation and id. */
  List<JobSummary> jobs();

  /** A job in one line, as in {@link #jobs()}; empty if it has no row. */
  Optional<JobSummary> summary(JobKey job);

  /**
   * What was added since the record was at a mark. Costs as much as was added, however large the
   * record is.
   */
  Growth grownSince(Mark mark);

  /**
   * The job of that id, whatever its organisation.
   *
   * @throws datumpeg.bridge.failure.InputException if several organisations have one
   */
  Optional<JobKey> findJob(String id);

  Optional<StoredEntry<JobRevisionEntry>> newestRevision(JobKey job);

  Optional<StoredEntry<JobRevisionEntry>> revision(JobKey job, int number);

  /**
   * All readings, voids, moves, tables, captures and profiles of the job; empty lists if there are
   * none.
   */
  JobLog log(JobKey job);

  /** The checks of meters stored for any job of an organisation, by time. */
  List<StoredEntry<MeterCheckEntry>> meterChecks(String organisation);

  /** Whether a table with these bytes was entered for the job. */
  boolean tableKnown(JobKey job, String sha256);

  /**
   * A new chain of rows, which stands in the record from its first entry on: merely opening writes
   * nothing.
   *
   * @throws IllegalStateException if the record was opened for reading only
   */
  RecordSession openSession(SessionStart start);

  /**
   * Reads every row and says which are altered, missing or out of order. What it cannot know stands
   * in {@link Verification#CANNOT_KNOW}.
   *
   * @param derived what the numbers beside readings are held against
   * @param keptElsewhere heads that were noted outside this file; may be empty
   */
  Verification verify(DerivedNumber derived, List<Head> keptElsewhere);

  /** The last row of every chain, by origin. */
  List<Head> heads();

  /**
   * A number that changes when anyone else adds rows: another process, or another open record in
   * this one. Cheap enough to ask for several times a second.
   */
  long changeCounter();

  /**
   * Closes the file, so that its disk can be taken out and repaired. Until {@link #reopen} whatever
   * is asked fails with {@link RecordUnavailableException}.
   */
  void letGo();

  /**
   * Closes the file and opens it again as it is now. Sessions that were open go on, each with a new
   * chain: what is in the file's place now may be a copy.
   *
   * @throws RecordUnavailableException if it cannot be opened yet; it is then let go of
   * @throws NotOurRecordException if there is no record in its place; it is then let go of
   */
  void reopen();

  /**
   * Why nothing can be added to the record, in a sentence, where that was found when it was opened:
   * its disk is full or read-only. While such a record is open nobody else may be able to write to
   * it, nor its disk be taken out: whoever reads on closes it between two looks.
   */
  Optional<String> obstacle();

  /** Where the record is. */
  Path file();

  @Override
  void close();
}
