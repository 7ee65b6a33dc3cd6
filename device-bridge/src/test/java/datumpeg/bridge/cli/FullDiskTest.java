package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.MovedEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Live meters while the disk of the record is really full. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "mount namespaces are of Linux")
class FullDiskTest extends SessionOnOwnDisk {
  private static final String SMALL_DISK = "mount -t tmpfs -o size=2m none $DISK";

  /** Leaves room for the record's own files, and less than a session would keep for what waits. */
  private static final String NEARLY_FILL =
      "head -c $(($(df --output=avail -B1 $DISK | tail -n 1) - 400000)) /dev/zero > $DISK/ballast";

  @Test
  void aFullDiskIsSaidAtOnceAndWhatWaitsIsStoredWhenThereIsRoom() throws Exception {
    Pty port = measure(SMALL_DISK);
    send(port, "18.001 m\r\n");
    untilSaid("recorded 18.001 m");
    mount().fill();
    send(port, "21.470 m\r\n");
    untilSaid("NOT STORED YET: 1 wait(s), at most 500 may");
    assertTrue(mount().said().contains("the disk is full"), mount().said());
    send(
        port,
        "ready\r\n".repeat(1000)); // more than fits into what the capture's last page has left
    untilSaid("THE RAW BYTES ARE NOT KEPT");
    assertTrue(
        mount().said().contains("They are kept in " + folder.resolve("disk/captures/waiting-")),
        mount().said());
    mount().makeRoom();
    untilSaid("what waited is stored now");
    send(port, "9.002 m\r\n");
    untilSaid("recorded 9.002 m");
    untilRawBytesAreKept(port);
    mount().type("quit\n");
    assertEquals(0, mount().ended(), mount().said());
    assertEquals(List.of("18.001", "21.470", "9.002"), stored());
    assertFalse(isThere("waiting-"), "nothing waits any longer");
    assertEquals(0, after().run("verify"), mount().said());
  }

  /**
   * In room that the session took on the disk at its start, or else on another disk. The program as
   * a crew has it, with its own spans.
   */
  @ParameterizedTest
  @ValueSource(strings = {NOTHING, NEARLY_FILL})
  void whatWaitsForAFullDiskOutlivesTheKill(String then) throws Exception {
    Pty port = measure(SMALL_DISK, then, ProgramUnderKill.class);
    send(port, "18.001 m\r\n");
    untilSaid("recorded 18.001 m");
    mount().fill();
    BleSite.aMomentPasses();
    send(port, "21.470 m\r\n");
    untilSaid("NOT STORED YET: 1 wait(s)");
    BleSite.aMomentPasses();
    send(port, "9.002 m\r\n");
    untilSaid("NOT STORED YET: 2 wait(s)");
    mount().kill();
    assertEquals(137, mount().ended(), mount().said());
    assertEquals(then.equals(NOTHING) ? 0 : 1, spareFiles());
    for (int again = 0; again < 2; again++) {
      TestConsole next = after();
      assertEquals(
          0,
          next.runWithInput("quit\n", "measure", "larkrise-01", "--stage", "arrival"),
          () -> next.err());
      assertEquals(List.of("18.001", "21.470", "9.002"), stored().stream().sorted().toList());
      assertEquals(0, spareFiles());
      assertFalse(isThere("waiting-"));
    }
    assertEquals(0, after().run("verify"));
  }

  private static final String FILL = "{ cat /dev/zero > $DISK/filler 2>/dev/null || true; }";

  private static final String READ_ONLY = "mount -o remount,ro $DISK";

  private void then(String then, String... commands) throws Exception {
    OwnMount started =
        OwnMount.start(folder, SMALL_DISK, then, SeveralCommands.class, Map.of(), commands);
    runs(started);
    assertEquals(0, started.ended(), started.said());
  }

  @Test
  void aSessionThatFindsTheDiskFullSaysThatItIsAndMeasuresAllTheSame() throws Exception {
    Pty port = measure(SMALL_DISK, FILL, HurriedProgram.class);
    assertTrue(mount().said().contains("record.db is full: "), mount().said());
    assertTrue(mount().said().contains("Readings wait until there is room."), mount().said());
    send(port, "18.001 m\r\n");
    untilSaid("NOT STORED YET: 1 wait(s)");
    assertTrue(mount().said().contains("They are kept in " + spare()), mount().said());
    mount().makeRoom();
    untilSaid("what waited is stored now");
    send(port, "21.470 m\r\n");
    untilSaid("recorded 21.470 m");
    mount().type("quit\n");
    assertEquals(0, mount().ended(), mount().said());
    assertEquals(List.of("18.001", "21.470"), stored());
    assertEquals(0, spareFiles());
    assertEquals(0, after().run("verify"), mount().said());
  }

  /** As a service does that is started again and again. */
  @Test
  void aLoggerStartedOnAFullDiskTakesOverWhatWaitsAndLosesNothing() throws Exception {
    Pty port = collectingFromAPort(FILL);
    send(port, "20.126 m\r\n");
    untilSaid("NOT STORED YET: 1 wait(s)");
    send(port, "7.001 m\r\n");
    untilSaid("NOT IN THE TABLE YET: 1 value(s) without a target wait.");
    mount().terminate();
    assertEquals(143, mount().ended(), mount().said());
    assertEquals(2, spareFiles());
    assertEquals(
        0,
        after()
            .run(
                "collect",
                "larkrise-01",
                "--stage",
                "arrival",
                "--for",
                "1",
                "--link",
                "serial:" + folder.resolve("unplugged")));
    assertEquals(List.of("20.126"), stored());
    assertEquals(List.of("7.001"), tabled());
    assertEquals(0, spareFiles());
  }

  @ParameterizedTest
  @ValueSource(strings = {FILL, READ_ONLY})
  void whatOnlyReadsNeedsNoRoomAndWritesNothing(String then) throws Exception {
    Files.writeString(folder.resolve("slab.csv"), SiteFolder.SLAB);
    assertEquals(0, new TestConsole(folder).run("enter", "larkrise-01", "slab.csv"));
    List<String> commands =
        List.of(
            "job list",
            "job show larkrise-01 --readings",
            "set-out larkrise-01",
            "reduce larkrise-01",
            "report larkrise-01 -o " + folder.resolve("report.html"),
            "trend --check slab-size",
            "limits list",
            "verify");
    byte[] before = Files.readAllBytes(folder.resolve("record.db"));
    then(then, commands.toArray(String[]::new));
    for (String command : commands) {
      assertTrue(mount().said().contains("status 0 of " + command), mount().said());
    }
    assertTrue(
        mount()
            .said()
            .contains(then.equals(FILL) ? "record.db is full: " : "record.db is read-only: "),
        mount().said());
    String answers = Files.readString(folder.resolve("out.txt"));
    assertTrue(answers.contains("18.004"), answers);
    assertTrue(answers.contains("Sound: "), answers);
    assertTrue(Files.readString(folder.resolve("report.html")).contains("Hay shed"));
    assertArrayEquals(before, Files.readAllBytes(folder.resolve("after/record.db")));
  }

  /** Rows that SQLite has not moved into the file yet are never passed over in silence. */
  @Test
  void aReadOnlyRecordWithNewerRowsBesideItIsNotReadWithoutThem() throws Exception {
    Path hot = Files.createDirectory(folder.resolve("hot"));
    try (SiteRecord open =
            SqliteRecords.open(folder.resolve("record.db"), SqliteRecords.Mode.WRITE);
        RecordSession session = open.openSession(new SessionStart("", "test", Clock.systemUTC()))) {
      session.append(StoredJob.find(open, "larkrise-01"), new MovedEntry("base.A1", "invented"));
      Files.copy(folder.resolve("record.db"), hot.resolve("record.db"));
      Files.copy(folder.resolve("record.db-wal"), hot.resolve("record.db-wal"));
    }
    then("cp hot/* $DISK && " + READ_ONLY, "job list");
    untilSaid("status 3 of job list");
    assertTrue(mount().said().contains("Copy both files"), mount().said());
  }

  @Test
  void aLoggerWithABluetoothMeterOutlivesAFullDisk() throws Exception {
    InventedMeter meter = collecting(SMALL_DISK);
    mount().fill();
    assertTrue(meter.measures(20.126));
    untilSaid("NOT STORED YET: 1 wait(s)");
    aMomentPasses();
    assertTrue(meter.measures(7.123)); // of no target: a row of the table
    untilSaid("NOT IN THE TABLE YET: 1 value(s) without a target wait.");
    mount().makeRoom();
    untilSaid("What waited is stored now.");
    aMomentPasses();
    assertTrue(meter.measures(21.47));
    untilTaken(21.47);
    mount().terminate();
    assertEquals(143, mount().ended(), mount().said());
    assertEquals(List.of("20.1260", "21.4700"), stored());
    assertTrue(isThere(".unassigned.csv"), "the value without a target is in its table");
    assertEquals(0, after().run("verify"), mount().said());
  }

  private Pty collectingFromAPort(String then) throws IOException {
    Pty port = new Pty();
    closesAtTheEnd(port::close);
    start(
        SMALL_DISK,
        then,
        HurriedProgram.class,
        Map.of(),
        "collect",
        "larkrise-01",
        "--stage",
        "arrival",
        "--link",
        "serial:" + port.getSlaveName());
    untilSaid("is there");
    return port;
  }

  /** Of no target of the job: 7.001 m, 7.002 m, … */
  private static String valuesWithoutATarget(int count) {
    return IntStream.rangeClosed(1, count)
        .mapToObj("7.%03d m\r\n"::formatted)
        .collect(Collectors.joining());
  }

  private int waitingValues(boolean onTheDisk) {
    try {
      String name = "values-larkrise-01-arrival.jsonl";
      Path file = onTheDisk ? mount().inside("captures/" + name) : spareFile("values-");
      return (int) Files.readString(file).lines().filter(line -> !line.isBlank()).count();
    } catch (IOException notYet) {
      return 0;
    }
  }

  private Path spareFile(String begin) throws IOException {
    try (Stream<Path> files = Files.list(spare())) {
      return files
          .filter(file -> file.toFile().getName().startsWith(begin))
          .findFirst()
          .orElseThrow(() -> new NoSuchFileException(begin));
    }
  }

  /** The values in all tables of those without a target, the oldest table first. */
  private List<String> tabled() throws IOException {
    List<String> values = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder.resolve("after/captures"))) {
      for (Path table :
          files.filter(file -> file.toString().endsWith(".unassigned.csv")).sorted().toList()) {
        Files.readAllLines(table).stream()
            .skip(1)
            .forEach(line -> values.add(line.split(",", -1)[3]));
      }
    }
    return values;
  }

  private static List<String> tabledValues(int count) {
    return IntStream.rangeClosed(1, count)
        .mapToObj(number -> new BigDecimal(7000 + number).movePointLeft(3))
        .map(value -> value.stripTrailingZeros().toPlainString())
        .toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {NOTHING, NEARLY_FILL})
  void whatALoggerHadWithoutATargetOnAFullDiskOutlivesTheKillAndIsInATableOnce(String then)
      throws Exception {
    boolean onTheDisk = then.equals(NOTHING);
    Pty port = collectingFromAPort(then);
    mount().fill();
    send(port, "20.126 m\r\n");
    untilSaid("NOT STORED YET: 1 wait(s)");
    send(port, valuesWithoutATarget(300));
    until("some wait on a disk", () -> waitingValues(onTheDisk) >= 20);
    int acknowledged = waitingValues(onTheDisk);
    mount().kill();
    assertEquals(137, mount().ended(), mount().said());
    for (int again = 0; again < 2; again++) {
      TestConsole next = after();
      assertEquals(
          0,
          next.run(
              "collect",
              "larkrise-01",
              "--stage",
              "arrival",
              "--for",
              "1",
              "--link",
              "serial:" + folder.resolve("unplugged")),
          () -> next.err());
      assertEquals(List.of("20.126"), stored());
      List<String> tabled = tabled();
      assertTrue(tabled.size() >= acknowledged, tabled.size() + " of " + acknowledged);
      assertEquals(tabledValues(tabled.size()), tabled, "each once, in their order");
      assertEquals(0, spareFiles());
      assertFalse(isThere("values-") || isThere("waiting-"));
    }
    assertEquals(0, after().run("verify"));
  }

  @Test
  void whenAsManyWaitAsMayThatIsSaidAtOnceAndTheyAreStoredWhenThereIsRoom() throws Exception {
    Pty port = collectingFromAPort(NOTHING);
    mount().fill();
    send(port, valuesWithoutATarget(520));
    untilSaid("They are kept in " + folder.resolve("disk/captures/values-larkrise-01-arrival"));
    untilSaid("LIMIT REACHED: 500 values without a target wait");
    untilSaid("LEFT OUT");
    mount().makeRoom();
    untilSaid("The values without a target that waited are in the table now.");
    mount().terminate();
    assertEquals(143, mount().ended(), mount().said());
    assertEquals(tabledValues(500), tabled().subList(0, 500));
    assertEquals(0, spareFiles());
  }
}
