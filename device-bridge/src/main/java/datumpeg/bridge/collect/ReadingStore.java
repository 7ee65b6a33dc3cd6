package datumpeg.bridge.collect;

import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.failure.IntegrityException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.RecordUnavailableException;
import datumpeg.bridge.record.entry.Entry;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Where a session's readings and voids go: into the record, or, while the record gives way (full,
 * locked, read-only, damaged), into a queue of at most {@value #LARGEST_WAITING} that drains in
 * order as soon as it can. A record whose disk failed is let go of until the disk is repaired. One
 * thread.
 */
public final class ReadingStore {
  /** So many entries wait at most; then no further reading is taken. */
  public static final int LARGEST_WAITING = 500;

  private final RecordSession session;
  private final JobKey key;
  private final @Nullable WaitingFile<Entry> file;
  private final RecordReturn record;
  private final Deque<Entry> waiting = new ArrayDeque<>();
  private @Nullable FailureException trouble;

  private ReadingStore(
      RecordSession session, JobKey key, @Nullable WaitingFile<Entry> file, RecordReturn record) {
    this.session = session;
    this.key = key;
    this.file = file;
    this.record = record;
  }

  /** A store without a queue: the record's failures are the caller's. */
  public static ReadingStore direct(RecordSession session, JobKey key) {
    return new ReadingStore(session, key, null, RecordReturn.never());
  }

  /** A store with a queue, of a record that stays open whatever happens. */
  public static ReadingStore queueing(RecordSession session, JobKey key, WaitingFile<Entry> file) {
    return queueing(session, key, file, RecordReturn.never());
  }

  /**
   * A store with a queue.
   *
   * @param file where what waits is kept too, so that the end of the program does not lose it
   * @param record the one that the session adds to
   */
  static ReadingStore queueing(
      RecordSession session, JobKey key, WaitingFile<Entry> file, RecordReturn record) {
    ReadingStore store = new ReadingStore(session, key, file, record);
    store.waiting.addAll(file.leftOver());
    return store;
  }

  /**
   * Stores an entry behind those that wait.
   *
   * @throws NothingMoreWaitsException if as many wait as may; the entry is then not taken
   */
  public void keep(Entry entry) {
    if (file == null) {
      session.append(key, entry);
      return;
    }
    if (!isLocked() && drain()) {
      try {
        session.append(key, entry);
        trouble = null;
        return;
      } catch (OuterWorldException | IntegrityException refused) {
        refusedBy(refused, file);
      }
    }
    if (waiting.size() >= LARGEST_WAITING) {
      throw new NothingMoreWaitsException(waiting.size(), trouble);
    }
    waiting.add(entry);
    file.add(entry);
  }

  /**
   * A locked record takes seconds to say so again, for which no meter is listened to: while
   * something waits it is asked at the pace of {@link #drain} alone.
   */
  private boolean isLocked() {
    return !waiting.isEmpty()
        && trouble instanceof RecordUnavailableException refused
        && refused.reason() == RecordUnavailableException.Reason.LOCKED;
  }

  /** Tries to store what waits; true if nothing waits any longer. */
  public boolean drain() {
    try {
      if (!record.isThere()) {
        leaveOutStored(record.comeBack());
      }
      while (!waiting.isEmpty()) {
        session.append(key, waiting.element());
        waiting.remove();
      }
      if (file != null) {
        file.clear();
      }
      trouble = null;
      return true;
    } catch (OuterWorldException | IntegrityException refused) {
      refusedBy(refused, file);
      return false;
    }
  }

  /** What was being committed when the disk failed may be on it after all. */
  private void leaveOutStored(JobLog log) {
    List<Entry> left = WaitingEntries.notIn(log, List.copyOf(waiting));
    waiting.clear();
    waiting.addAll(left);
  }

  private void refusedBy(FailureException refused, @Nullable WaitingFile<Entry> kept) {
    trouble = refused;
    if (record.letGoAfter(refused) && kept != null) {
      kept.letGo();
    }
    if (kept != null) {
      kept.retry();
    }
  }

  public int waitingCount() {
    return waiting.size();
  }

  /** Whether the record is open; false while its disk is awaited. */
  boolean isRecordThere() {
    return record.isThere();
  }

  /** Whether what waits would survive the end of the program. */
  public boolean isWaitingOnDisk() {
    return file == null || file.isWhole();
  }

  /** The file that holds what waits of this session, if one holds all of it. */
  public Optional<Path> waitingPlace() {
    return file == null ? Optional.empty() : file.place();
  }

  /** Why entries wait; empty when none does. */
  public Optional<FailureException> trouble() {
    return Optional.ofNullable(trouble);
  }
}
