package datumpeg.bridge.record.sqlite;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;

/**
 * Tells a disk that takes nothing: mounted read-only, or turned so by the system when it found an
 * error on it. Linux 6.13 and newer say the latter of ext4 by an option of the mount that is not
 * {@code ro} (seen on 6.18; from which version on is from memory). A file of the record is not
 * opened to find out: closing it would give up the locks that SQLite holds.
 */
public final class ReadOnlyDisk {
  private static final Path MOUNTS = Path.of("/proc/self/mounts");
  private static final String TURNED_READ_ONLY = "emergency_ro";

  private ReadOnlyDisk() {}

  /** Whether a file lies on one; false where that cannot be told. */
  public static boolean holds(Path file) {
    try {
      FileStore store = Files.getFileStore(file);
      return store.isReadOnly() || hasTurnedReadOnly(store.name());
    } catch (IOException unknown) {
      return false;
    }
  }

  private static boolean hasTurnedReadOnly(String device) throws IOException {
    if (!Files.isReadable(MOUNTS)) {
      return false;
    }
    try (Stream<String> mounts = Files.lines(MOUNTS)) {
      return mounts.anyMatch(mount -> isTurned(mount.split(" ", -1), device));
    }
  }

  /** Device, folder, kind, options, two numbers: fstab(5). */
  private static boolean isTurned(String[] mount, String device) {
    return mount.length > 3
        && mount[0].equals(device)
        && Arrays.asList(mount[3].split(",", -1)).contains(TURNED_READ_ONLY);
  }
}
