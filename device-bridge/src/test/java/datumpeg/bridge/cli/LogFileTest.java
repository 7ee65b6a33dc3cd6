package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LogFileTest {
  @TempDir Path folder;

  @Test
  void entriesOfTwoProcessesStandInOneFile() throws IOException {
    Path file = folder.resolve("deep/er/datumpeg.log");
    assertTrue(new LogFile(file).append(new LogRecord(Level.WARNING, "first")));
    assertTrue(new LogFile(file).append(new LogRecord(Level.WARNING, "second")));
    String written = Files.readString(file);
    assertTrue(written.indexOf("first") < written.indexOf("second"), written);
  }

  @Test
  void fullFileIsSetAsideAndOnlyOneOlderFileIsKept() throws IOException {
    Path file = folder.resolve("datumpeg.log");
    LogFile log = new LogFile(file);
    String megabyte = "x".repeat(1 << 20);
    for (int i = 0; i < 4; i++) {
      assertTrue(log.append(new LogRecord(Level.WARNING, megabyte)));
    }
    try (var files = Files.list(folder)) {
      assertEquals(2, files.count());
    }
    assertTrue(Files.size(file) < 2L << 20);
  }

  @Test
  void folderThatCannotBeMadeIsNoFailure() throws IOException {
    Path blocked = Files.writeString(folder.resolve("file"), "");
    assertFalse(
        new LogFile(blocked.resolve("datumpeg.log")).append(new LogRecord(Level.WARNING, "lost")));
  }
}
