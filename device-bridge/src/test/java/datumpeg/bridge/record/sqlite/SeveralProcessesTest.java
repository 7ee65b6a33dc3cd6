package datumpeg.bridge.record.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.record.DerivedNumber;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.RecordUnavailableException;
import datumpeg.bridge.record.RecordUnavailableException.Reason;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.Verification;
import datumpeg.bridge.record.sqlite.SqliteRecords.Mode;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(120)
class SeveralProcessesTest {
  private static final int LENGTH_OF_ID = 36;

  @TempDir Path folder;

  private Path file() {
    return folder.resolve("site.db");
  }

  @Test
  void everyAcknowledgedReadingOutlivesAKilledProcess() throws Exception {
    Process child = RecordChild.start("append", file().toString(), "1000000");
    List<String> acknowledged = new ArrayList<>();
    try (BufferedReader lines = RecordChild.linesOf(child)) {
      readIds(lines, 50, acknowledged);
      // By its handle, which leaves what it has printed to be read.
      child.toHandle().destroyForcibly();
      child.waitFor();
      readIds(lines, Integer.MAX_VALUE, acknowledged);
    } finally {
      child.destroyForcibly();
    }
    assertTrue(acknowledged.size() >= 50);
    try (SiteRecord record = SqliteRecords.open(file(), Mode.READ)) {
      assertTrue(storedIds(record).containsAll(acknowledged));
      assertTrue(record.verify(DerivedNumber.NOT_CHECKED, List.of()).isSound());
    }
  }

  /** A line that was cut off by the kill was not seen by anyone: it does not count. */
  private static void readIds(BufferedReader lines, int most, List<String> ids) throws IOException {
    for (int i = 0; i < most; i++) {
      @Nullable String line = lines.readLine();
      if (line == null) {
        return;
      }
      if (line.length() == LENGTH_OF_ID) {
        ids.add(line);
      }
    }
  }

  private static Set<String> storedIds(SiteRecord record) {
    return record.log(Rows.JOB).readings().stream()
        .map(stored -> stored.entry().id().toString())
        .collect(Collectors.toSet());
  }

  @Test
  void twoProcessesWriteOneRecordEachInItsOwnChain() throws Exception {
    try (SiteRecord record = SqliteRecords.open(file(), Mode.WRITE)) {
      Process one = RecordChild.start("append", file().toString(), "60");
      Process other = RecordChild.start("append", file().toString(), "60");
      List<String> acknowledged = new ArrayList<>();
      try (BufferedReader linesOfOne = RecordChild.linesOf(one);
          BufferedReader linesOfOther = RecordChild.linesOf(other)) {
        readIds(linesOfOne, Integer.MAX_VALUE, acknowledged);
        readIds(linesOfOther, Integer.MAX_VALUE, acknowledged);
        assertEquals(0, one.waitFor());
        assertEquals(0, other.waitFor());
      } finally {
        one.destroyForcibly();
        other.destroyForcibly();
      }
      assertEquals(120, acknowledged.size());
      assertEquals(Set.copyOf(acknowledged), storedIds(record));
      Verification found = record.verify(DerivedNumber.NOT_CHECKED, List.of());
      assertTrue(found.isSound(), found.findings()::toString);
      assertEquals(2, found.chainCount());
      assertEquals(122, found.rowCount());
    }
  }

  @Test
  void aRecordLockedByAnotherProcessIsToldAndUsableAfterwards() throws Exception {
    SqliteSettings impatient = SqliteSettings.usual().withLockWait(Duration.ofMillis(200));
    try (SiteRecord record = SqliteRecords.open(file(), Mode.WRITE, impatient);
        RecordSession session = record.openSession(Rows.START)) {
      session.append(Rows.JOB, Rows.reading(1));
      Process child = RecordChild.start("hold", file().toString());
      try (BufferedReader lines = RecordChild.linesOf(child)) {
        assertEquals("held", lines.readLine());
        RecordUnavailableException e =
            assertThrows(
                RecordUnavailableException.class, () -> session.append(Rows.JOB, Rows.reading(2)));
        assertEquals(Reason.LOCKED, e.reason());
        assertEquals(3, e.exitStatus());
        Messages.assertSays(e, file().toString(), "0.2 s", "store 1 row", "Nothing was stored");
        assertEquals(1, record.log(Rows.JOB).readings().size());
        child.getOutputStream().close();
        assertEquals(0, child.waitFor());
      } finally {
        child.destroyForcibly();
      }
      session.append(Rows.JOB, Rows.reading(3));
      assertEquals(2, record.log(Rows.JOB).readings().size());
      assertTrue(record.verify(DerivedNumber.NOT_CHECKED, List.of()).isSound());
    }
  }
}
