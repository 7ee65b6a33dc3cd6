package datumpeg.bridge.collect;

import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.NotOurRecordException;
import datumpeg.bridge.record.RecordDamagedException;
import datumpeg.bridge.record.RecordUnavailableException;
import datumpeg.bridge.record.RecordUnavailableException.Reason;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.StoredEntry;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Lets go of a record whose disk failed, so that the disk can be taken out and repaired, and finds
 * the record again when it is back. One thread.
 */
final class RecordReturn {
  private final @Nullable SiteRecord record;
  private final JobKey job;

  /** Of the job's first row: what tells the record from another one in its place. */
  private final Optional<String> mark;

  private boolean away;

  private RecordReturn(@Nullable SiteRecord record, JobKey job, Optional<String> mark) {
    this.record = record;
    this.job = job;
    this.mark = mark;
  }

  static RecordReturn of(SiteRecord record, JobKey job) {
    return new RecordReturn(record, job, mark(record, job));
  }

  /** For a record that stays open. */
  static RecordReturn never() {
    return new RecordReturn(null, JobKey.NONE, Optional.empty());
  }

  private static Optional<String> mark(SiteRecord record, JobKey job) {
    return record.revision(job, 1).map(StoredEntry::digest);
  }

  /** The digest of the job's first row; empty where there is none. */
  Optional<String> mark() {
    return mark;
  }

  boolean isThere() {
    return !away;
  }

  /** Lets go of a record that was opened on a full disk and could only be read until now. */
  void letGoOfFull() {
    if (record != null && record.obstacle().isPresent()) {
      away = true;
      record.letGo();
    }
  }

  /** Lets go of the record if its disk failed; true if that is so. */
  boolean letGoAfter(FailureException refused) {
    if (record != null && isOfTheDisk(refused)) {
      away = true;
      record.letGo();
    }
    return away;
  }

  /** A full disk and a lock pass by themselves. */
  private static boolean isOfTheDisk(FailureException refused) {
    return refused instanceof RecordDamagedException
        || (refused instanceof RecordUnavailableException unavailable
            && unavailable.reason() != Reason.FULL
            && unavailable.reason() != Reason.LOCKED);
  }

  /**
   * Opens the record again.
   *
   * @return what it holds of the job
   * @throws datumpeg.bridge.failure.OuterWorldException if it cannot be opened yet, or another one
   *     is in its place
   */
  JobLog comeBack() {
    if (record == null) {
      throw new IllegalStateException("the record was never away");
    }
    try {
      record.reopen();
    } catch (NotOurRecordException other) {
      throw notThere(record, other);
    }
    if (!mark(record, job).equals(mark)) {
      record.letGo();
      throw new RecordUnavailableException(
          Reason.NOT_REACHABLE,
          record.file(),
          "Another record is now at "
              + record.file()
              + ": it does not hold the job "
              + job
              + " as it was when this session began. Nothing was stored in it; put the record back.",
          null);
    }
    JobLog log = record.log(job);
    away = false;
    return log;
  }

  private static RecordUnavailableException notThere(
      SiteRecord record, NotOurRecordException other) {
    return new RecordUnavailableException(
        Reason.NOT_REACHABLE,
        record.file(),
        other.found() == NotOurRecordException.Found.NOTHING
            ? "The record " + record.file() + " is not there: its disk is out."
            : String.valueOf(other.getMessage()),
        other);
  }
}
