package datumpeg.bridge.collect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.exchange.UnassignedTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A folder that is not there stands for a disk that takes nothing. */
class UnassignedStoreTest {
  private static final int SESSIONS = 60;

  @TempDir Path folder;
  private final List<WaitingFile<UnassignedTable.Row>> files = new ArrayList<>();

  private static UnassignedTable.Row row(int number) {
    return new UnassignedTable.Row(
        "arrival",
        "distance",
        "7." + number,
        "m",
        "2026-03-02T08:15:30Z",
        "",
        "value " + number + ")");
  }

  private Path captures() {
    return folder.resolve("captures");
  }

  private List<Path> tables() {
    try (Stream<Path> all = Files.list(captures())) {
      return all.filter(file -> file.toString().endsWith(".csv")).sorted().toList();
    } catch (IOException noDisk) {
      return List.of();
    }
  }

  private UnassignedStore store(String table) {
    WaitingFile<UnassignedTable.Row> file =
        WaitingFile.of(
            captures().resolve("values.jsonl"),
            new SpareFolders(List.of(SpareFolders.Spare.own(folder.resolve("spare")))),
            "values-x.jsonl",
            new WaitingRows(),
            rows -> UnassignedTable.notIn(tables(), rows));
    files.add(file);
    return new UnassignedStore(new UnassignedTable(captures().resolve(table)), file);
  }

  /** As the end of a program does, which gives up its locks. */
  @AfterEach
  void programDies() {
    files.forEach(WaitingFile::close);
    files.clear();
  }

  private List<Integer> inTables() throws IOException {
    List<Integer> numbers = new ArrayList<>();
    for (Path table : tables()) {
      List<String> lines = Files.readAllLines(table);
      assertEquals("stage,quantity,target,value,unit,at,operator,note", lines.get(0));
      lines.stream()
          .skip(1)
          .forEach(line -> numbers.add(Integer.parseInt(line.split(",")[3].substring(2))));
    }
    return numbers;
  }

  @Test
  void whatTheTableDoesNotTakeWaitsOnAnotherDiskAndDrainsInOrder() throws Exception {
    UnassignedStore store = store("a.csv");
    assertTrue(store.keep(row(1)));
    assertTrue(store.keep(row(2)));
    assertEquals(2, store.waitingCount());
    assertTrue(store.isWaitingOnDisk());
    Path spare = folder.resolve("spare").resolve("values-x.jsonl");
    assertEquals(spare, store.waitingPlace().orElseThrow());
    assertTrue(store.trouble().isPresent());
    Files.createDirectory(captures());
    assertTrue(store.keep(row(3)));
    assertEquals(0, store.waitingCount());
    assertEquals(List.of(1, 2, 3), inTables());
    assertFalse(Files.exists(spare));
    assertTrue(store.trouble().isEmpty());
  }

  @Test
  void whatWaitedWhenTheProgramDiedIsInTheNextTableOnce() throws Exception {
    UnassignedStore dying = store("a.csv");
    dying.keep(row(1));
    dying.keep(row(2));
    Path spare = folder.resolve("spare").resolve("values-x.jsonl");
    byte[] before = Files.readAllBytes(spare);
    programDies();
    Files.createDirectory(captures());
    assertTrue(store("b.csv").drain());
    assertEquals(List.of(1, 2), inTables());
    programDies();
    // Killed behind the row and before the file was removed; its last line is cut.
    Files.write(spare, before);
    Files.writeString(spare, "{\"kind\":\"val", StandardOpenOption.APPEND);
    UnassignedStore next = store("c.csv");
    assertEquals(0, next.waitingCount());
    assertTrue(next.drain());
    assertEquals(List.of(1, 2), inTables());
  }

  @Test
  void theQueueIsBounded() throws Exception {
    UnassignedStore store = store("a.csv");
    for (int i = 0; i < UnassignedStore.LARGEST_WAITING; i++) {
      assertTrue(store.keep(row(i)));
    }
    assertFalse(store.keep(row(777)));
    assertFalse(store.isTableFull());
    Files.createDirectory(captures());
    assertTrue(store.drain());
    assertTrue(store.keep(row(888)));
    List<Integer> expected =
        new ArrayList<>(IntStream.range(0, UnassignedStore.LARGEST_WAITING).boxed().toList());
    expected.add(888);
    assertEquals(expected, inTables());
  }

  @Test
  void sessionsThatDieAtAnyMomentLoseAndDoubleNothing() throws Exception {
    SplittableRandom random = new SplittableRandom(20260302);
    Path away = folder.resolve("away");
    Files.createDirectory(captures());
    int kept = 0;
    for (int session = 0; session < SESSIONS; session++) {
      UnassignedStore store = store("table-%03d.csv".formatted(session));
      int steps = random.nextInt(12);
      for (int step = 0; step < steps; step++) {
        boolean takes = random.nextInt(3) == 0;
        if (takes && Files.exists(away)) {
          Files.move(away, captures());
        } else if (!takes && Files.exists(captures())) {
          Files.move(captures(), away);
        }
        assertTrue(store.keep(row(++kept)));
        assertTrue(store.isWaitingOnDisk());
      }
      programDies();
    }
    if (Files.exists(away)) {
      Files.move(away, captures());
    }
    for (int again = 0; again < 2; again++) {
      assertTrue(store("table-last-%d.csv".formatted(again)).drain());
      programDies();
    }
    assertEquals(
        IntStream.rangeClosed(1, kept).boxed().toList(), inTables().stream().sorted().toList());
    try (Stream<Path> left = Files.list(folder.resolve("spare"))) {
      assertEquals(0, left.count());
    }
  }
}
