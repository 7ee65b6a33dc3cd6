package datumpeg.bridge.record.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.record.DerivedNumber;
import datumpeg.bridge.record.NotOurRecordException;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.RecordUnavailableException;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords.Mode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A record that is let go of while a session is open, and opened again. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "an open file cannot be moved there")
class ReopenedRecordTest {
  @TempDir Path folder;
  private Path file;
  private SiteRecord record;
  private RecordSession session;

  @BeforeEach
  void open() {
    file = folder.resolve("site.db");
    record = SqliteRecords.open(file, Mode.WRITE);
    session = record.openSession(Rows.startAfterSeconds(0));
    session.append(Rows.JOB, Rows.reading(0));
  }

  @AfterEach
  void close() {
    session.close();
    record.close();
  }

  private int readings() {
    return record.log(Rows.JOB).readings().size();
  }

  private void move(String name) throws IOException {
    for (String end : List.of("", "-wal", "-shm")) {
      Path from = Path.of(file + end);
      if (Files.exists(from)) {
        Files.move(from, folder.resolve(name + end));
      }
    }
  }

  @Test
  void nothingIsOpenUntilItIsOpenedAgain() throws IOException {
    record.letGo();
    assertFalse(Files.exists(Path.of(file + "-wal")), "what lay beside it is in it");
    assertThrows(RecordUnavailableException.class, this::readings);
    assertThrows(RecordUnavailableException.class, () -> session.append(Rows.JOB, Rows.reading(1)));
    move("out.db");
    assertThrows(NotOurRecordException.class, record::reopen);
    assertFalse(Files.exists(file), "no record is made in its place");
    Files.writeString(file, "not a record");
    assertThrows(NotOurRecordException.class, record::reopen);
    assertThrows(RecordUnavailableException.class, this::readings);
  }

  @Test
  void theSessionGoesOnWithAChainOfItsOwn() {
    record.letGo();
    record.reopen();
    session.append(Rows.JOB, Rows.reading(1));
    record.reopen();
    session.append(Rows.JOB, Rows.reading(2));
    assertEquals(3, readings());
    assertEquals(3, record.heads().size());
    assertTrue(record.verify(DerivedNumber.NOT_CHECKED, List.of()).isSound());
  }

  /** SQLite removes what lies beside a record by name: it must not be the other one's. */
  @Test
  void whatIsInItsPlaceByNowComesToNoHarm() throws IOException {
    move("old.db");
    try (SiteRecord other = SqliteRecords.open(file, Mode.WRITE);
        RecordSession others = other.openSession(Rows.startAfterSeconds(1))) {
      others.append(Rows.JOB, Rows.reading(1));
      record.letGo();
      assertTrue(Files.size(Path.of(file + "-wal")) > 0);
      others.append(Rows.JOB, Rows.reading(2));
      assertEquals(2, other.log(Rows.JOB).readings().size());
      record.reopen();
      assertEquals(2, readings());
    }
  }

  @Test
  void aFileIsToldFromTheOneThatTakesItsPlace() throws IOException {
    FileIdentity identity = FileIdentity.of(file);
    assertFalse(identity.isReplacedAt(file));
    move("old.db");
    assertFalse(identity.isReplacedAt(file), "nothing is there that could come to harm");
    Files.copy(folder.resolve("old.db"), file);
    assertTrue(identity.isReplacedAt(file));
    assertFalse(FileIdentity.of(folder.resolve("nowhere")).isReplacedAt(file));
  }
}
