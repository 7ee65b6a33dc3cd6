package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.ble.NativeProcess;
import datumpeg.bridge.link.ble.Patience;
import datumpeg.bridge.link.ble.peer.BluezPeer;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import datumpeg.bridge.link.ble.peer.PrivateBus;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;

/** A site with a job, and the tests' own Bluetooth service on a bus of its own. */
final class BleSite implements AutoCloseable {
  static final String JOB = "larkrise-01";

  /** What a link's name ends with: the usual way to Bluetooth LE has no word of its own. */
  static final String BLUEZ = "";

  static final String TINYB = "?backend=tinyb";

  /** As usual, but a meter that is not there is given up after three seconds. */
  private static final Patience PATIENCE =
      new Patience(Duration.ofSeconds(3), Patience.USUAL.connecting(), Patience.USUAL.answer());

  final Path folder;
  final TestConsole console;
  final BluezPeer peer;
  private final PrivateBus bus;

  private BleSite(Path folder, PrivateBus bus, BluezPeer peer, TestConsole console) {
    this.folder = folder;
    this.bus = bus;
    this.peer = peer;
    this.console = console;
  }

  /**
   * With the job in its record; where no bus can be started the test is skipped, with the reason.
   */
  static BleSite open(Path folder, String job) throws Exception {
    PrivateBus.obstacle().ifPresent(obstacle -> assumeTrue(false, obstacle));
    PrivateBus bus = PrivateBus.start(folder);
    SiteFolder site =
        new SiteFolder(folder, Map.of("DBUS_SYSTEM_BUS_ADDRESS", bus.address()), PATIENCE);
    site.write("shed.toml", job);
    assertEquals(0, site.console.run("job", "add", "shed.toml"), site.console.err());
    return new BleSite(folder, bus, BluezPeer.start(bus.address()), site.console);
  }

  /** The invented meter's link, as a person names it. */
  static String link(String backend) {
    return "ble:" + InventedMeter.ADDRESS + backend;
  }

  /** Runs a command on a thread of its own until it has said something. */
  CompletableFuture<Integer> running(String shown, String... words) {
    return running(InputStream.nullInputStream(), shown, words);
  }

  /** The same, with what is typed meanwhile. */
  CompletableFuture<Integer> running(InputStream typed, String shown, String... words) {
    CompletableFuture<Integer> ended = console.begin(typed, words);
    until(shown, () -> console.err().contains(shown) || ended.isDone());
    return ended;
  }

  void until(String what, BooleanSupplier happened) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!happened.getAsBoolean()) {
      assertTrue(
          System.nanoTime() < deadline, "waited too long until " + what + ": " + console.err());
      LockSupport.parkNanos(5_000_000);
    }
  }

  void untilRecorded(int count) {
    until(
        count + " readings are recorded",
        () -> console.err().split("\n  recorded ", -1).length - 1 == count);
  }

  /** Values within a second of one another would count as kept back. */
  static void aMomentPasses() {
    LockSupport.parkNanos(1_250_000_000L);
  }

  List<ReadingEntry> readings() {
    return readings(console);
  }

  static List<ReadingEntry> readings(TestConsole console) {
    try (SiteRecord opened = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      return opened.log(StoredJob.find(opened, JOB)).readings().stream()
          .map(row -> row.entry())
          .toList();
    }
  }

  static List<String> inForce(TestConsole console) {
    try (SiteRecord opened = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      return opened.log(StoredJob.find(opened, JOB)).inForce().stream()
          .map(row -> row.entry().value())
          .toList();
    }
  }

  /** Another record with the same job, into which this one's capture has been replayed. */
  TestConsole replayed(String job) throws IOException {
    SiteFolder site = new SiteFolder(Files.createDirectory(folder.resolve("other")));
    site.write("shed.toml", job);
    assertEquals(0, site.console.run("job", "add", "shed.toml"), site.console.err());
    assertEquals(
        0,
        site.console.run("replay", JOB, "--stage", "arrival", capture().toString()),
        site.console.err());
    return site.console;
  }

  Path capture() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("captures"))) {
      return files
          .filter(file -> file.toString().endsWith(".capture.jsonl"))
          .findFirst()
          .orElseThrow();
    }
  }

  /** Ends the one process of the native library by a signal, as its own crash would. */
  static void crash(InventedMeter meter) throws IOException, InterruptedException {
    NativeProcess.crash();
    // The daemon ends the subscriptions of a client that left the bus; the connection it leaves.
    meter.distance().forget();
  }

  @Override
  public void close() {
    peer.close();
    bus.close();
  }
}
