package datumpeg.bridge.record.sqlite;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.record.DerivedNumber;
import datumpeg.bridge.record.Finding.Trouble;
import datumpeg.bridge.record.NotOurRecordException;
import datumpeg.bridge.record.NotOurRecordException.Found;
import datumpeg.bridge.record.RecordDamagedException;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.RecordUnavailableException;
import datumpeg.bridge.record.RecordUnavailableException.Reason;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.UnsuitablePlaceException;
import datumpeg.bridge.record.Verification;
import datumpeg.bridge.record.entry.Head;
import datumpeg.bridge.record.sqlite.SqliteRecords.Mode;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.sqlite.SQLiteConfig;

class SqliteRecordsTest {
  private static final int PAGE_SIZE = 4096;

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("site.db");
  }

  @Test
  void aNewRecordIsAFileOfOurOwnWithAVersionOnly() throws Exception {
    SqliteRecords.open(file, Mode.WRITE).close();
    assertEquals(Schema.APPLICATION_ID, raw("PRAGMA application_id"));
    assertEquals(1, raw("PRAGMA user_version"));
    assertEquals(0, raw("SELECT count(*) FROM entry"));
  }

  @Test
  void aNameThatLooksLikeOptionsIsJustAName() {
    Path odd = folder.resolve("site?mode=memory&x=%20 ü.db");
    SqliteRecords.open(odd, Mode.WRITE).close();
    assertTrue(Files.exists(odd));
    SqliteRecords.open(odd, Mode.READ).close();
  }

  @ParameterizedTest
  @EnumSource(Mode.class)
  void aTextFileIsNotARecord(Mode mode) throws IOException {
    Files.writeString(file, "stage,quantity,target,value,unit\n".repeat(10));
    byte[] before = Files.readAllBytes(file);
    NotOurRecordException e = assertNotOurs(mode, Found.NOT_A_DATABASE);
    Messages.assertSays(e, file.toString(), "Nothing in it was changed");
    assertArrayEquals(before, Files.readAllBytes(file));
  }

  @ParameterizedTest
  @EnumSource(Mode.class)
  void aDatabaseOfAnotherProgramIsLeftAlone(Mode mode) throws Exception {
    raw("CREATE TABLE entry (x)", "PRAGMA journal_mode = WAL", "PRAGMA user_version = 1");
    byte[] before = Files.readAllBytes(file);
    NotOurRecordException e = assertNotOurs(mode, Found.ANOTHER_APPLICATION);
    Messages.assertSays(e, file.toString(), "found application id 0", "expected 1148473447");
    assertArrayEquals(before, Files.readAllBytes(file));
  }

  @ParameterizedTest
  @EnumSource(Mode.class)
  void aNewerVersionIsLeftAlone(Mode mode) throws Exception {
    SqliteRecords.open(file, Mode.WRITE).close();
    raw("PRAGMA user_version = 2");
    byte[] before = Files.readAllBytes(file);
    NotOurRecordException e = assertNotOurs(mode, Found.NEWER_VERSION);
    Messages.assertSays(e, file.toString(), "of version 2", "up to 1");
    assertArrayEquals(before, Files.readAllBytes(file));
  }

  @ParameterizedTest
  @EnumSource(Mode.class)
  void aFolderIsNotARecord(Mode mode) throws IOException {
    Files.createDirectory(file);
    Messages.assertSays(assertNotOurs(mode, Found.NOT_A_DATABASE), file.toString(), "folder");
  }

  @Test
  void nothingToReadIsTold() throws IOException {
    Messages.assertSays(assertNotOurs(Mode.READ, Found.NOTHING), file.toString());
    assertFalse(Files.exists(file));
    Files.createFile(file);
    assertNotOurs(Mode.READ, Found.NOTHING);
    SqliteRecords.open(file, Mode.WRITE).close();
    SqliteRecords.open(file, Mode.READ).close();
  }

  private NotOurRecordException assertNotOurs(Mode mode, Found found) {
    NotOurRecordException e =
        assertThrows(NotOurRecordException.class, () -> SqliteRecords.open(file, mode));
    assertEquals(found, e.found());
    assertEquals(2, e.exitStatus());
    return e;
  }

  @Test
  void aFolderThatCannotBeMadeIsTold() throws IOException {
    Files.writeString(folder.resolve("in the way"), "");
    RecordUnavailableException e =
        assertThrows(
            RecordUnavailableException.class,
            () -> SqliteRecords.open(folder.resolve("in the way/site.db"), Mode.WRITE));
    assertEquals(Reason.NOT_REACHABLE, e.reason());
  }

  /** SQLite answers as for a read-only file; taking the right away would not stop root. */
  @Test
  void aRecordThatMayNotBeWrittenIsTold() {
    fill(1);
    RecordUnavailableException e = appendFails(List.of("query_only = ON"));
    assertEquals(Reason.READ_ONLY, e.reason());
    Messages.assertSays(e, file.toString(), "read-only", "Nothing was stored");
    assertSoundWithReadings(1);
  }

  @Test
  void aFullDiskIsToldAndLosesNothing() throws SQLException {
    fill(40);
    RecordUnavailableException e =
        appendFails(List.of("max_page_count = " + raw("PRAGMA page_count")));
    assertEquals(Reason.FULL, e.reason());
    assertEquals(3, e.exitStatus());
    Messages.assertSays(e, file.toString(), "disk is full", "Nothing was stored");
    assertSoundWithReadings(40);
  }

  private RecordUnavailableException appendFails(List<String> pragmas) {
    SqliteSettings settings = SqliteSettings.usual().withPragmas(pragmas);
    try (SiteRecord record = SqliteRecords.open(file, Mode.WRITE, settings);
        RecordSession session = record.openSession(Rows.START)) {
      return assertThrows(
          RecordUnavailableException.class,
          () ->
              session.appendAll(
                  Rows.JOB, IntStream.range(0, 100).mapToObj(Rows::reading).toList()));
    }
  }

  @Test
  void aSessionGoesOnWhereItWasAfterAFailure() throws SQLException {
    fill(40);
    long pages = raw("PRAGMA page_count");
    SqliteSettings small =
        SqliteSettings.usual().withPragmas(List.of("max_page_count = " + (pages + 9)));
    try (SiteRecord record = SqliteRecords.open(file, Mode.WRITE, small);
        RecordSession session = record.openSession(Rows.START)) {
      session.append(Rows.JOB, Rows.reading(1));
      assertThrows(
          RecordUnavailableException.class,
          () ->
              session.appendAll(
                  Rows.JOB, IntStream.range(0, 500).mapToObj(Rows::reading).toList()));
      assertEquals(3, session.append(Rows.JOB, Rows.reading(2)).sequence());
    }
    assertSoundWithReadings(42);
  }

  @Test
  void aDamagedPageIsToldByReadingAndByVerify() throws Exception {
    fill(200);
    long page = raw("SELECT rootpage FROM sqlite_schema WHERE name = 'entry'");
    try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
      byte[] rubbish = new byte[PAGE_SIZE];
      Arrays.fill(rubbish, (byte) 0xa5);
      bytes.seek((page - 1) * PAGE_SIZE);
      bytes.write(rubbish);
    }
    try (SiteRecord record = SqliteRecords.open(file, Mode.READ)) {
      RecordDamagedException e =
          assertThrows(RecordDamagedException.class, () -> record.log(Rows.JOB));
      assertEquals(4, e.exitStatus());
      Messages.assertSays(e, file.toString(), "damaged");
      Verification found = record.verify(DerivedNumber.NOT_CHECKED, List.of());
      assertFalse(found.isSound());
      assertTrue(found.findings().stream().allMatch(one -> one.trouble() == Trouble.DAMAGED_FILE));
    }
  }

  @Test
  void aCopyThatIsWrittenToDoesNotForkAnyChain() throws IOException {
    fill(2);
    Path copy = folder.resolve("copy.db");
    Files.copy(file, copy);
    List<Head> common = heads(file);
    fill(3);
    try (SiteRecord record = SqliteRecords.open(copy, Mode.WRITE);
        RecordSession session = record.openSession(Rows.startAfterSeconds(9))) {
      session.append(Rows.JOB, Rows.reading(1));
    }
    List<Head> here = heads(file);
    List<Head> there = heads(copy);
    assertEquals(common.get(0), here.get(0));
    assertEquals(common.get(0), there.get(0));
    assertNotEquals(here.get(1).origin(), there.get(1).origin());
  }

  @Test
  void aSessionNamesTheHeadsThatNoneNamedBefore() throws SQLException {
    for (int session = 0; session < 4; session++) {
      fill(1);
    }
    assertEquals(4, heads(file).size());
    assertEquals(
        3, raw("SELECT sum(json_array_length(body, '$.heads')) FROM entry WHERE kind = 'session'"));
    assertEquals(
        1, raw("SELECT max(json_array_length(body, '$.heads')) FROM entry WHERE kind = 'session'"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"nfs", "NFS4", "cifs", "smb3", "fuse.sshfs", "9p"})
  void aNetworkFileStoreIsRefused(String type) {
    StorageProbe probe = at -> at.equals(at.getRoot()) ? "ext4" : type;
    assertRefused(file, probe, type.toLowerCase(java.util.Locale.ROOT));
  }

  @Test
  void aContainerWhoseOwnDiskIsBehindAProtocolIsNotANetwork() {
    new PlaceCheck(at -> "9p").require(file);
  }

  @Test
  void aPlaceThatCannotBeJudgedIsNotRefused() {
    new PlaceCheck(
            at -> {
              throw new IOException("no mount point");
            })
        .require(file);
  }

  @ParameterizedTest
  @ValueSource(strings = {"OneDrive - Example", "Dropbox", "Nextcloud"})
  void aSyncedFolderIsRefusedByItsName(String name) throws IOException {
    Files.createDirectories(folder.resolve(name).resolve("site"));
    assertRefused(folder.resolve(name).resolve("site/new/site.db"), at -> "ext4", name);
  }

  @Test
  void aSyncedFolderIsRefusedByItsMarker() throws IOException {
    Files.createDirectories(folder.resolve("shared/site"));
    Files.createDirectory(folder.resolve("shared/.stfolder"));
    assertRefused(folder.resolve("shared/site/site.db"), at -> "ext4", "shared");
  }

  private static void assertRefused(Path file, StorageProbe probe, String named) {
    UnsuitablePlaceException e =
        assertThrows(
            UnsuitablePlaceException.class,
            () -> SqliteRecords.open(file, Mode.WRITE, SqliteSettings.usual().withProbe(probe)));
    Messages.assertSays(e, file.toString(), named);
    assertEquals(2, e.exitStatus());
    assertFalse(Files.exists(file));
  }

  private void fill(int readings) {
    try (SiteRecord record = SqliteRecords.open(file, Mode.WRITE);
        RecordSession session = record.openSession(Rows.startAfterSeconds(record.heads().size()))) {
      session.appendAll(Rows.JOB, IntStream.range(0, readings).mapToObj(Rows::reading).toList());
    }
  }

  private static List<Head> heads(Path file) {
    try (SiteRecord record = SqliteRecords.open(file, Mode.READ)) {
      return record.heads();
    }
  }

  private void assertSoundWithReadings(int count) {
    try (SiteRecord record = SqliteRecords.open(file, Mode.READ)) {
      assertEquals(count, record.log(Rows.JOB).readings().size());
      assertTrue(record.verify(DerivedNumber.NOT_CHECKED, List.of()).isSound());
    }
  }

  /** Runs statements on the bare file; the number the last one answers. */
  private long raw(String... statements) throws SQLException {
    long answer = 0;
    try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        if (statement.execute(sql)) {
          try (ResultSet result = statement.getResultSet()) {
            answer = result.getLong(1);
          }
        }
      }
    }
    return answer;
  }
}
