package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.ble.peer.BluezPeer;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import datumpeg.bridge.link.ble.peer.PrivateBus;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.freedesktop.dbus.exceptions.DBusException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands over a Bluetooth LE meter of the peer's. */
class BleMeasuringTest {
  private static final String LINK = "ble:" + InventedMeter.ADDRESS;

  @TempDir Path folder;
  private PrivateBus bus;
  private BluezPeer peer;
  private TestConsole console;

  @BeforeEach
  void open() throws Exception {
    PrivateBus.obstacle().ifPresent(obstacle -> assumeTrue(false, obstacle));
    bus = PrivateBus.start(folder);
    startPeer();
    console = new SiteFolder(folder, Map.of("DBUS_SYSTEM_BUS_ADDRESS", bus.address())).console;
    assertEquals(0, console.run("job", "add", "shed.toml"), console.err());
  }

  private void startPeer() throws DBusException {
    peer = BluezPeer.start(bus.address());
  }

  @AfterEach
  void close() {
    if (bus != null) {
      peer.close();
      bus.close();
    }
  }

  private CompletableFuture<Integer> running(String shown, String... words) {
    CompletableFuture<Integer> ended = CompletableFuture.supplyAsync(() -> console.run(words));
    until(shown, () -> console.err().contains(shown) || ended.isDone());
    return ended;
  }

  private CompletableFuture<Integer> measuring() {
    return running(
        "Measure distance",
        "measure",
        "larkrise-01",
        "--stage",
        "arrival",
        "--wait",
        "2",
        "--link",
        LINK);
  }

  private void until(String what, BooleanSupplier happened) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
    while (!happened.getAsBoolean()) {
      assertTrue(
          System.nanoTime() < deadline, "waited too long until " + what + ": " + console.err());
      LockSupport.parkNanos(5_000_000);
    }
  }

  private void untilRecorded(int count) {
    until(
        count + " readings are recorded",
        () -> console.err().split("\n  recorded ", -1).length - 1 == count);
  }

  /** Values within a second of one another would count as kept back. */
  private static void aMomentPasses() {
    LockSupport.parkNanos(1_100_000_000L);
  }

  private static List<ReadingEntry> readings(TestConsole console) {
    try (SiteRecord opened = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      return opened.log(StoredJob.find(opened, "larkrise-01")).readings().stream()
          .map(row -> row.entry())
          .toList();
    }
  }

  private static List<String> essence(TestConsole console) {
    return readings(console).stream()
        .map(one -> String.join(" ", one.target(), one.value(), one.unit(), one.raw(), one.link()))
        .toList();
  }

  @Test
  void aMeterThatDescribesItselfNeedsNoProfileAndItsCaptureReplays() throws Exception {
    InventedMeter meter = InventedMeter.describingItself(peer);
    CompletableFuture<Integer> ended = measuring();
    until("the battery is said", () -> console.err().contains("the meter's battery is at 87 %"));
    assertTrue(meter.measures(18.0035));
    untilRecorded(1);
    aMomentPasses();
    assertTrue(meter.measures(20.126));
    untilRecorded(2);
    meter.device().goOffAir();
    assertEquals(3, ended.get(60, TimeUnit.SECONDS), console.err());

    assertTrue(console.err().contains(InventedMeter.ADDRESS + " was lost"), console.err());
    List<ReadingEntry> stored = readings(console);
    assertEquals(List.of("18.0035", "20.1260"), stored.stream().map(ReadingEntry::value).toList());
    assertEquals("m", stored.get(0).unit());
    assertEquals(LINK, stored.get(0).link());
    assertEquals("43bf0200", stored.get(0).raw(), "the bytes as they came");

    Path other = Files.createDirectory(folder.resolve("other"));
    TestConsole elsewhere = SiteFolder.withJob(other).console;
    String capture = capture();
    assertEquals(
        0, elsewhere.run("replay", "larkrise-01", "--stage", "arrival", capture), elsewhere.err());
    assertEquals(essence(console), essence(elsewhere));
  }

  private String capture() throws Exception {
    try (Stream<Path> files = Files.list(folder.resolve("captures"))) {
      return files
          .filter(file -> file.toString().endsWith(".capture.jsonl"))
          .findFirst()
          .orElseThrow()
          .toString();
    }
  }

  @Test
  void textCutIntoNotificationsIsReadWhole() throws Exception {
    InventedMeter meter = InventedMeter.ofText(peer);
    CompletableFuture<Integer> ended = measuring();
    meter.says("Distance to the far corner: 18.0035 m\r\n");
    untilRecorded(1);
    meter.device().goOffAir();
    assertEquals(3, ended.get(60, TimeUnit.SECONDS), console.err());
    assertEquals("18.0035", readings(console).get(0).value());
  }

  @Test
  void valuesKeptBackAreHeldAndAMessageDeliveredTwiceIsOne() throws Exception {
    InventedMeter meter = InventedMeter.describingItself(peer);
    CompletableFuture<Integer> ended = measuring();
    meter.measures(18.003);
    meter.measures(20.126);
    meter.measures(9.001);
    until("the burst is held", () -> console.err().split("HELD: ", -1).length - 1 == 2);
    assertTrue(console.err().contains("within a second of another"), console.err());
    aMomentPasses();
    meter.measures(18.004);
    meter.measures(18.004);
    until("the second is said", () -> console.err().contains("the same message again"));
    aMomentPasses();
    meter.measures(20.1255);
    untilRecorded(3);
    meter.device().goOffAir();
    ended.get(60, TimeUnit.SECONDS);
    assertEquals(List.of("18.0040", "20.1255"), inForce(console));

    TestConsole elsewhere =
        SiteFolder.withJob(Files.createDirectory(folder.resolve("other"))).console;
    String capture = capture();
    assertEquals(
        0, elsewhere.run("replay", "larkrise-01", "--stage", "arrival", capture), elsewhere.err());
    assertEquals(inForce(console), inForce(elsewhere));
  }

  private static List<String> inForce(TestConsole console) {
    try (SiteRecord opened = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      return opened.log(StoredJob.find(opened, "larkrise-01")).inForce().stream()
          .map(row -> row.entry().value())
          .toList();
    }
  }

  @Test
  void aMeterThatWentAwayIsReachedAgainAndTheSessionGoesOn() throws Exception {
    InventedMeter meter = InventedMeter.describingItself(peer);
    CompletableFuture<Integer> ended = measuring();
    assertTrue(meter.measures(18.0035));
    untilRecorded(1);
    meter.device().drop();
    until("the return is said", () -> console.err().contains(LINK + " is there"));
    aMomentPasses();
    assertTrue(meter.measures(20.126));
    untilRecorded(2);
    meter.device().goOffAir();
    assertEquals(3, ended.get(60, TimeUnit.SECONDS), console.err());
    assertEquals(List.of("18.0035", "20.1260"), inForce(console));
  }

  @Test
  void metersListNamesWhatIsHeardAndNothingOfItSteersTheTerminal() {
    InventedMeter.describingItself(peer);
    assertEquals(0, console.run("meters", "list", "--scan", "1"), console.err());
    assertTrue(console.out().contains(LINK + "  Shed Rule?[2J -58 dBm"), console.out());
    assertFalse(console.out().contains("\u001b"), "an escape reached the screen");
    assertEquals(0, console.run("--json", "meters", "list", "--scan", "1"));
    assertTrue(console.out().contains("\"" + LINK + "\""), console.out());
    peer.adapter().powerOff();
    assertEquals(0, console.run("meters", "list", "--scan", "1"));
    assertTrue(console.err().contains("hci0 is switched off"), console.err());
    assertEquals(2, console.run("meters", "list", "--scan", "61"));
  }

  @Test
  void metersWatchShowsTheBytesOfEachCharacteristic() throws Exception {
    InventedMeter meter = InventedMeter.describingItself(peer);
    CompletableFuture<Integer> ended =
        running("Watching " + LINK, "meters", "watch", "--wait", "1", LINK);
    assertTrue(meter.measures(18.0035), console.err());
    until("the bytes are shown", () -> console.out().contains("43 bf 02 00"));
    assertTrue(console.out().contains("from " + InventedMeter.DISTANCE), console.out());
    meter.device().goOffAir();
    assertEquals(3, ended.get(60, TimeUnit.SECONDS), console.err());
  }

  @Test
  void aMeterThatIsNotThereIsSaidBeforeAnythingIsMeasured() {
    peer.device("C0:FF:EE:00:00:02", "Other");
    assertEquals(3, console.run("measure", "larkrise-01", "--stage", "arrival", "--link", LINK));
    assertTrue(console.err().contains("was not heard within 10 s"), console.err());
    assertTrue(console.err().contains("C0:FF:EE:00:00:02 Other"), console.err());
  }
}
