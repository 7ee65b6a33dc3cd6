package datumpeg.bridge.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.logging.LogRecord;
import java.util.logging.SimpleFormatter;

/**
 * The file that takes stack traces and warnings, at most {@value #LARGEST_BYTES} bytes and one
 * older file of that size. It is opened for each entry and made by the first one: a run without
 * trouble touches no disk, and several processes may append to it.
 *
 * <p>Thread-safe.
 */
final class LogFile {
  private static final long LARGEST_BYTES = 1L << 20;

  private final Path file;

  LogFile(Path file) {
    this.file = file;
  }

  Path file() {
    return file;
  }

  /**
   * Appends one entry.
   *
   * @return false when the file cannot be written: a log that fails must not stop a measurement
   */
  synchronized boolean append(LogRecord entry) {
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      setAsideWhenFull();
      Files.writeString(
          file,
          new SimpleFormatter().format(entry),
          StandardCharsets.UTF_8,
          StandardOpenOption.CREATE,
          StandardOpenOption.APPEND);
      return true;
    } catch (IOException | SecurityException e) {
      return false;
    }
  }

  private void setAsideWhenFull() throws IOException {
    if (Files.exists(file) && Files.size(file) > LARGEST_BYTES) {
      Path older = file.resolveSibling(file.getFileName() + ".1");
      Files.move(file, older, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
