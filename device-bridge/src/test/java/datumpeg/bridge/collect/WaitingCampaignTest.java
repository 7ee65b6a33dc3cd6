package datumpeg.bridge.collect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Sessions that die at any moment, on disks that take and refuse by turns: every reading is stored
 * once, and those of a session in their order.
 */
class WaitingCampaignTest {
  private static final JobKey JOB = new JobKey("local", "larkrise-01");
  private static final int SESSIONS = 60;

  @TempDir Path folder;
  private final SplittableRandom random = new SplittableRandom(20260302);
  private final TimeOrderedIds ids = new TimeOrderedIds(Clock.systemUTC());
  private final List<List<Double>> kept = new ArrayList<>();
  private SiteRecord record;
  private GivingWaySession session;

  @BeforeEach
  void open() throws IOException {
    Path file = folder.resolve("record.db");
    Files.createDirectory(folder.resolve("captures"));
    record = SqliteRecords.open(file, SqliteRecords.Mode.WRITE);
    session =
        new GivingWaySession(
            record.openSession(new SessionStart("", "test", Clock.systemUTC())), file);
  }

  @AfterEach
  void close() {
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

  /** The folder of the captures takes what waits in half of the sessions. */
  private WaitingFile<Entry> waiting(boolean takes) {
    return WaitingFile.of(
        folder.resolve(takes ? "captures" : "missing").resolve("waiting.jsonl"),
        new SpareFolders(List.of(SpareFolders.Spare.own(folder.resolve("spare")))),
        "waiting-x.jsonl",
        () -> record.log(JOB));
  }

  private Map<Path, byte[]> files() throws IOException {
    Map<Path, byte[]> files = new HashMap<>();
    for (String name : List.of("captures", "spare")) {
      if (Files.isDirectory(folder.resolve(name))) {
        try (Stream<Path> all = Files.list(folder.resolve(name))) {
          for (Path file : all.toList()) {
            files.put(file, Files.readAllBytes(file));
          }
        }
      }
    }
    return files;
  }

  private void runSession(int number) throws IOException {
    List<Double> mine = new ArrayList<>();
    kept.add(mine);
    Map<Path, byte[]> before = Map.of();
    try (WaitingFile<Entry> file = waiting(random.nextBoolean())) {
      ReadingStore store = ReadingStore.queueing(session, JOB, file);
      int steps = random.nextInt(12);
      for (int step = 0; step < steps; step++) {
        session.full = random.nextInt(3) > 0;
        before = files();
        double value = number * 100 + step + 1;
        store.keep(reading(value));
        mine.add(value);
        assertTrue(store.isWaitingOnDisk());
      }
    }
    if (!session.full && random.nextBoolean()) {
      // As if it had died behind the commit, and before the files were removed.
      for (Map.Entry<Path, byte[]> left : before.entrySet()) {
        Files.write(left.getKey(), left.getValue());
      }
    }
  }

  @Test
  void everyReadingIsStoredOnceAndThoseOfASessionInTheirOrder() throws IOException {
    for (int number = 0; number < SESSIONS; number++) {
      runSession(number);
    }
    session.full = false;
    for (int again = 0; again < 2; again++) {
      try (WaitingFile<Entry> last = waiting(true)) {
        assertTrue(ReadingStore.queueing(session, JOB, last).drain());
      }
      assertEquals(0, files().size());
    }
    List<Double> stored =
        record.log(JOB).readings().stream().map(row -> row.entry().siValue()).toList();
    assertEquals(kept.stream().mapToInt(List::size).sum(), stored.size());
    for (int number = 0; number < SESSIONS; number++) {
      int from = number * 100;
      assertEquals(
          kept.get(number),
          stored.stream().filter(value -> value > from && value < from + 100).toList());
    }
  }
}
