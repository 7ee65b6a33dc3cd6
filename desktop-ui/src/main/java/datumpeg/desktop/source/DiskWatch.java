package datumpeg.desktop.source;

import datumpeg.bridge.record.RecordUnavailableException;
import datumpeg.bridge.record.RecordUnavailableException.Reason;
import datumpeg.bridge.record.sqlite.ReadOnlyDisk;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * Looks every few seconds whether the disk of an open record has turned read-only, as it does when
 * the system finds an error on it: reading goes on all the same, and an open record would keep the
 * disk from being taken out and repaired. One thread.
 */
final class DiskWatch {
  private static final long BETWEEN_LOOKS_NANOS = TimeUnit.SECONDS.toNanos(2);

  private final Path file;
  private long lookedNanos = System.nanoTime();

  DiskWatch(Path file) {
    this.file = file;
  }

  /**
   * Looks, if it is time to.
   *
   * @throws RecordUnavailableException if the disk is read-only now
   */
  void requireWritable() {
    long now = System.nanoTime();
    if (now - lookedNanos < BETWEEN_LOOKS_NANOS) {
      return;
    }
    lookedNanos = now;
    if (ReadOnlyDisk.holds(file)) {
      throw new RecordUnavailableException(
          Reason.READ_ONLY, file, "The disk of the record " + file + " turned read-only.", null);
    }
  }
}
