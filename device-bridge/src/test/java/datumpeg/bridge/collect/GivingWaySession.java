package datumpeg.bridge.collect;

import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.RecordUnavailableException;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.Entry;
import java.nio.file.Path;
import java.util.List;

/** A session of a real record in front of which a disk can be full. */
final class GivingWaySession implements RecordSession {
  private final RecordSession real;
  private final Path file;
  boolean full;
  boolean broken;
  boolean locked;
  int lockedCount;

  GivingWaySession(RecordSession real, Path file) {
    this.real = real;
    this.file = file;
  }

  @Override
  public <E extends Entry> StoredEntry<E> append(JobKey job, E entry) {
    refuse();
    return real.append(job, entry);
  }

  @Override
  public List<StoredEntry<Entry>> appendAll(JobKey job, List<? extends Entry> entries) {
    refuse();
    return real.appendAll(job, entries);
  }

  private void refuse() {
    if (broken) {
      throw new RecordUnavailableException(
          RecordUnavailableException.Reason.DISK_ERROR, file, "The disk failed.", null);
    }
    if (locked) {
      lockedCount++;
      throw new RecordUnavailableException(
          RecordUnavailableException.Reason.LOCKED, file, "It is locked.", null);
    }
    if (full) {
      throw new RecordUnavailableException(
          RecordUnavailableException.Reason.FULL, file, "The disk is full.", null);
    }
  }

  @Override
  public void close() {
    real.close();
  }
}
