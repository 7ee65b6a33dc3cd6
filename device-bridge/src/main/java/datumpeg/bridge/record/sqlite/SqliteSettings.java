package datumpeg.bridge.record.sqlite;

import java.time.Duration;
import java.util.List;

/**
 * What may differ between a record in use and one in a test.
 *
 * @param lockWait how long to wait for another process before giving up
 * @param probe what the place of the file is judged by
 * @param pragmas further settings of the connection, each as {@code name = value}
 */
public record SqliteSettings(Duration lockWait, StorageProbe probe, List<String> pragmas) {
  public SqliteSettings {
    pragmas = List.copyOf(pragmas);
  }

  /** Five seconds, the machine's own file stores, nothing further. */
  public static SqliteSettings usual() {
    return new SqliteSettings(Duration.ofSeconds(5), StorageProbe.OF_THIS_MACHINE, List.of());
  }

  public SqliteSettings withLockWait(Duration wait) {
    return new SqliteSettings(wait, probe, pragmas);
  }

  public SqliteSettings withProbe(StorageProbe other) {
    return new SqliteSettings(lockWait, other, pragmas);
  }

  public SqliteSettings withPragmas(List<String> further) {
    return new SqliteSettings(lockWait, probe, further);
  }
}
