package datumpeg.bridge.record.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;

/**
 * Which file a path named at one moment: its disk and its number there, where the platform knows
 * them. Immutable.
 */
record FileIdentity(Optional<Object> key) {

  /** Of the file that the path names now. */
  static FileIdentity of(Path file) {
    try {
      return new FileIdentity(
          Optional.ofNullable(Files.readAttributes(file, BasicFileAttributes.class).fileKey()));
    } catch (IOException absent) {
      return new FileIdentity(Optional.empty());
    }
  }

  /**
   * Whether another file is in its place now. On closing, SQLite removes what lies beside a record
   * by name, and looks at the number alone, which a copy of a disk has too: the newest rows of the
   * file that is there now would be lost.
   */
  boolean isReplacedAt(Path file) {
    Optional<Object> now = of(file).key();
    return key.isPresent() && now.isPresent() && !key.equals(now);
  }
}
