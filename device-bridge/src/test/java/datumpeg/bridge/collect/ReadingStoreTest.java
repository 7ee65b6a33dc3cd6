package datumpeg.bridge.collect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.record.DerivedNumber;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.RecordUnavailableException;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.JobRevisionEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReadingStoreTest {
  private static final JobKey JOB = new JobKey("local", "larkrise-01");

  @TempDir Path folder;
  private final TimeOrderedIds ids = new TimeOrderedIds(Clock.systemUTC());
  private SiteRecord record;
  private GivingWaySession session;
  private final List<WaitingFile<Entry>> waiting = new ArrayList<>();

  @BeforeEach
  void open() {
    Path file = folder.resolve("record.db");
    record = SqliteRecords.open(file, SqliteRecords.Mode.WRITE);
    session =
        new GivingWaySession(
            record.openSession(new SessionStart("", "test", Clock.systemUTC())), file);
  }

  @AfterEach
  void close() {
    programDies();
    session.close();
    record.close();
  }

  private ReadingEntry reading(double metres) {
    return ReadingEntry.builder(ids.next(), "arrival", "distance", "slab.A1-slab.B1")
        .value("" + metres, "m", metres)
        .readAt(OffsetDateTime.parse("2026-03-02T08:15:30Z"))
        .source("test")
        .build();
  }

  private static JobRevisionEntry revision() {
    return JobRevisionEntry.of(1, "Hay shed", "# invented");
  }

  private Path file() {
    return folder.resolve("waiting.jsonl");
  }

  private ReadingStore store() {
    waiting.add(WaitingFile.of(file(), () -> record.log(JOB)));
    return ReadingStore.queueing(session, JOB, waiting.get(waiting.size() - 1));
  }

  /** As the end of a program does, which gives up its locks. */
  private void programDies() {
    waiting.forEach(WaitingFile::close);
    waiting.clear();
  }

  private List<Double> stored() {
    JobLog log = record.log(JOB);
    return log.readings().stream().map(row -> row.entry().siValue()).toList();
  }

  @Test
  void whatCannotBeStoredWaitsAndDrainsInOrder() {
    ReadingStore store = store();
    store.keep(reading(1));
    session.full = true;
    store.keep(reading(2));
    store.keep(reading(3));
    assertEquals(2, store.waitingCount());
    assertTrue(String.valueOf(store.trouble().orElseThrow().getMessage()).contains("full"));
    assertTrue(Files.exists(file()));
    assertEquals(List.of(1.0), stored());
    session.full = false;
    store.keep(reading(4));
    assertEquals(0, store.waitingCount());
    assertFalse(Files.exists(file()));
    assertEquals(List.of(1.0, 2.0, 3.0, 4.0), stored());
  }

  @Test
  void whatWaitedWhenTheProgramDiedIsStoredByTheNextSessionOnce() throws Exception {
    ReadingStore dying = store();
    session.full = true;
    dying.keep(reading(2));
    dying.keep(reading(3));
    byte[] before = Files.readAllBytes(file());
    programDies();
    session.full = false;
    assertTrue(store().drain());
    assertEquals(List.of(2.0, 3.0), stored());
    // Killed after the commit and before the file was removed: nothing is stored twice. The last
    // line is cut, as a dying program leaves it.
    Files.write(file(), before);
    Files.writeString(file(), "{\"kind\":\"read", java.nio.file.StandardOpenOption.APPEND);
    assertTrue(store().drain());
    assertEquals(List.of(2.0, 3.0), stored());
  }

  @Test
  void aLineCutShortTakesNoOtherReadingWithIt() throws Exception {
    ReadingStore dying = store();
    session.full = true;
    dying.keep(reading(2));
    programDies();
    Files.writeString(file(), "{\"kind\":\"read", java.nio.file.StandardOpenOption.APPEND);
    store().keep(reading(3));
    programDies();
    session.full = false;
    assertTrue(store().drain());
    assertEquals(List.of(2.0, 3.0), stored());
  }

  @Test
  void twoSessionsOfOneStageNeitherLoseNorDoubleWhatWaits() {
    ReadingStore first = store();
    session.full = true;
    first.keep(reading(1));
    ReadingStore second = store();
    assertEquals(0, second.waitingCount(), "what the first keeps is its own while it lives");
    second.keep(reading(2));
    session.full = false;
    assertTrue(first.drain());
    assertEquals(List.of(1.0), stored());
    assertFalse(Files.exists(file()));
    assertTrue(Files.exists(folder.resolve("waiting.2.jsonl")), "the second's is not touched");
    programDies();
    ReadingStore third = store();
    assertEquals(1, third.waitingCount());
    assertTrue(third.drain());
    assertEquals(List.of(1.0, 2.0), stored());
    assertFalse(Files.exists(folder.resolve("waiting.2.jsonl")));
  }

  @Test
  void whatWasTakenOverAndStillCannotBeStoredStaysOnTheDisk() {
    ReadingStore dying = store();
    session.full = true;
    dying.keep(reading(1));
    programDies();
    ReadingStore next = store();
    next.keep(reading(2));
    programDies();
    session.full = false;
    ReadingStore last = store();
    assertEquals(2, last.waitingCount());
    assertTrue(last.drain());
    assertEquals(List.of(1.0, 2.0), stored());
  }

  @Test
  void saysWhetherWhatWaitsWouldOutliveTheProgram() {
    Path nowhere = folder.resolve("missing").resolve("waiting.jsonl");
    ReadingStore inMemory =
        ReadingStore.queueing(session, JOB, WaitingFile.of(nowhere, () -> record.log(JOB)));
    session.full = true;
    assertTrue(inMemory.isWaitingOnDisk());
    inMemory.keep(reading(1));
    assertFalse(inMemory.isWaitingOnDisk());
    ReadingStore onDisk = store();
    onDisk.keep(reading(2));
    assertTrue(onDisk.isWaitingOnDisk());
  }

  @Test
  void whatTheDiskDidNotTakeIsWrittenWhenItDoes() throws Exception {
    Path later = folder.resolve("later");
    waiting.add(WaitingFile.of(later.resolve("waiting.jsonl"), () -> record.log(JOB)));
    ReadingStore store = ReadingStore.queueing(session, JOB, waiting.get(0));
    session.full = true;
    store.keep(reading(1));
    store.keep(reading(2));
    assertFalse(store.isWaitingOnDisk());
    Files.createDirectory(later); // as a disk that is there again
    assertFalse(store.drain());
    assertTrue(store.isWaitingOnDisk());
    programDies();
    session.full = false;
    waiting.add(WaitingFile.of(later.resolve("waiting.jsonl"), () -> record.log(JOB)));
    assertTrue(ReadingStore.queueing(session, JOB, waiting.get(0)).drain());
    assertEquals(List.of(1.0, 2.0), stored());
  }

  private SpareFolders spares() {
    return new SpareFolders(List.of(SpareFolders.Spare.amongOthers(folder.resolve("spare"))));
  }

  private ReadingStore storeWithSpare(Path base) {
    waiting.add(WaitingFile.of(base, spares(), "waiting-x.jsonl", () -> record.log(JOB)));
    return ReadingStore.queueing(session, JOB, waiting.get(waiting.size() - 1));
  }

  @Test
  void whatTheFirstFolderDoesNotTakeWaitsInTheNextAndDrainsInOrderOnce() throws Exception {
    Path later = folder.resolve("later");
    Path base = later.resolve("waiting.jsonl");
    ReadingStore dying = storeWithSpare(base);
    session.full = true;
    dying.keep(reading(1));
    dying.keep(reading(2));
    Path spare = folder.resolve("spare").resolve("waiting-x.jsonl");
    assertEquals(spare, dying.waitingPlace().orElseThrow());
    assertEquals(
        "rwx------",
        PosixFilePermissions.toString(Files.getPosixFilePermissions(spare.getParent())));
    byte[] before = Files.readAllBytes(spare);
    programDies();
    // The next session's disk takes its readings again, though the record does not.
    Files.createDirectory(later);
    ReadingStore next = storeWithSpare(base);
    assertEquals(spare, next.waitingPlace().orElseThrow());
    next.keep(reading(3));
    assertEquals(base, next.waitingPlace().orElseThrow());
    programDies();
    session.full = false;
    assertTrue(storeWithSpare(base).drain());
    assertEquals(List.of(1.0, 2.0, 3.0), stored());
    assertFalse(Files.exists(spare));
    assertFalse(Files.exists(base));
    // Killed after the commit and before the files were removed; and written to both folders.
    programDies();
    Files.write(spare, before);
    Files.write(base, before);
    assertTrue(storeWithSpare(base).drain());
    assertEquals(List.of(1.0, 2.0, 3.0), stored());
  }

  @Test
  void aFolderInTheNameOfAnotherUserIsNotTouched() throws Exception {
    Path elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
    Files.createSymbolicLink(folder.resolve("spare"), elsewhere);
    ReadingStore store = storeWithSpare(folder.resolve("missing").resolve("waiting.jsonl"));
    session.full = true;
    store.keep(reading(1));
    assertFalse(store.isWaitingOnDisk());
    assertEquals(0, elsewhere.toFile().listFiles().length);
  }

  /** The file is moved away and back, as a disk that is taken out and put back. */
  @Test
  void aRecordWhoseDiskFailedIsLetGoOfAndFoundAgain() throws Exception {
    Path file = folder.resolve("record.db");
    session.append(JOB, revision());
    waiting.add(WaitingFile.of(file(), () -> record.log(JOB)));
    ReadingStore store =
        ReadingStore.queueing(session, JOB, waiting.get(0), RecordReturn.of(record, JOB));
    store.keep(reading(1));
    session.broken = true;
    store.keep(reading(2));
    assertFalse(store.isRecordThere());
    session.broken = false;
    Path out = folder.resolve("out.db");
    Files.move(file, out);
    assertFalse(store.drain());
    assertTrue(String.valueOf(store.trouble().orElseThrow().getMessage()).contains("is out"));
    assertFalse(Files.exists(file), "no new record is made in its place");
    try (SiteRecord other = SqliteRecords.open(file, SqliteRecords.Mode.WRITE);
        RecordSession others = other.openSession(new SessionStart("", "test", Clock.systemUTC()))) {
      others.append(JOB, revision());
    }
    store.keep(reading(3));
    assertEquals(2, store.waitingCount());
    assertTrue(
        String.valueOf(store.trouble().orElseThrow().getMessage()).contains("Another record"));
    Files.move(out, file, StandardCopyOption.REPLACE_EXISTING);
    assertTrue(store.drain());
    assertTrue(store.isRecordThere());
    store.keep(reading(4));
    assertEquals(List.of(1.0, 2.0, 3.0, 4.0), stored());
    assertEquals(List.of(), record.verify(DerivedNumber.NOT_CHECKED, List.of()).findings());
    assertEquals(2, record.heads().size(), "what was opened again has a chain of its own");
  }

  /** What a full disk still takes: bytes in the place of others. */
  @Test
  void whatWaitsIsWrittenIntoTheRoomThatWasKeptForIt() throws Exception {
    int room = 10_000;
    ReadingStore store = store();
    waiting.get(0).keepRoom(room);
    assertEquals(room, Files.size(file()));
    for (int round = 0; round < 3; round++) {
      session.full = true;
      store.keep(reading(2 * round + 1));
      store.keep(reading(2 * round + 2));
      assertEquals(file(), store.waitingPlace().orElseThrow());
      assertEquals(room, Files.size(file()), "not a byte more");
      session.full = false;
      assertTrue(store.drain());
      assertTrue(Files.readString(file()).isBlank());
      assertEquals(room, Files.size(file()));
    }
    assertEquals(List.of(1.0, 2.0, 3.0, 4.0, 5.0, 6.0), stored());
    session.full = true;
    store.keep(reading(7));
    programDies();
    assertTrue(Files.exists(file()), "something waits in it");
    session.full = false;
    ReadingStore next = store();
    waiting.get(0).keepRoom(room);
    assertTrue(next.drain());
    assertEquals(7, stored().size());
    programDies();
    assertFalse(Files.exists(file()), "a session that ends gives its room back");
    assertFalse(Files.exists(folder.resolve("waiting.2.jsonl")));
  }

  @Test
  void whatDoesNotFitIntoTheRoomWaitsBehindIt() {
    ReadingStore store = store();
    waiting.get(0).keepRoom(100);
    session.full = true;
    store.keep(reading(1));
    store.keep(reading(2));
    programDies();
    session.full = false;
    assertTrue(store().drain());
    assertEquals(List.of(1.0, 2.0), stored());
  }

  /** While a disk is away, what waits is kept as it is and not written anew at each try. */
  @Test
  void theFileOfWhatWaitsDoesNotGrowWithTheTries() throws Exception {
    session.append(JOB, revision());
    Path base = folder.resolve("missing").resolve("waiting.jsonl");
    for (Path kept : List.of(file(), folder.resolve("spare").resolve("waiting-x.jsonl"))) {
      programDies();
      waiting.add(
          WaitingFile.of(
              kept.equals(file()) ? kept : base,
              spares(),
              "waiting-x.jsonl",
              () -> record.log(JOB)));
      ReadingStore store =
          ReadingStore.queueing(session, JOB, waiting.get(0), RecordReturn.of(record, JOB));
      session.broken = true;
      store.keep(reading(1));
      store.keep(reading(2));
      assertEquals(kept, store.waitingPlace().orElseThrow());
      long size = Files.size(kept);
      for (int i = 0; i < 20; i++) {
        assertFalse(store.drain());
      }
      assertEquals(size, Files.size(kept));
      // And where the file itself went away with its disk, it is written again.
      Files.delete(kept);
      assertFalse(store.drain());
      assertTrue(store.isWaitingOnDisk());
      assertEquals(2, Files.readString(kept).lines().filter(line -> !line.isBlank()).count());
      session.broken = false;
      assertTrue(store.drain());
    }
  }

  /**
   * Each try takes the seconds that one waits for a lock, and no meter is listened to meanwhile.
   */
  @Test
  void aLockedRecordIsNotAskedForEachReadingAgain() {
    ReadingStore store = store();
    session.locked = true;
    for (int i = 1; i <= 5; i++) {
      store.keep(reading(i));
    }
    assertEquals(5, store.waitingCount());
    assertEquals(1, session.lockedCount);
    assertFalse(store.drain());
    assertEquals(2, session.lockedCount);
    session.locked = false;
    store.keep(reading(6));
    assertTrue(store.drain());
    assertEquals(List.of(1.0, 2.0, 3.0, 4.0, 5.0, 6.0), stored());
  }

  @Test
  void theQueueIsBoundedAndSaysSo() {
    ReadingStore store = store();
    session.full = true;
    for (int i = 1; i <= ReadingStore.LARGEST_WAITING; i++) {
      store.keep(reading(i));
    }
    OuterWorldException refused =
        assertThrows(NothingMoreWaitsException.class, () -> store.keep(reading(7)));
    assertTrue(String.valueOf(refused.getMessage()).contains("500 wait"), refused.getMessage());
    session.full = false;
    assertTrue(store.drain());
    assertEquals(ReadingStore.LARGEST_WAITING, stored().size());
  }

  @Test
  void withoutAQueueTheRecordsFailureIsTheCallers() {
    session.full = true;
    ReadingStore store = ReadingStore.direct(session, JOB);
    assertThrows(RecordUnavailableException.class, () -> store.keep(reading(1)));
  }
}
