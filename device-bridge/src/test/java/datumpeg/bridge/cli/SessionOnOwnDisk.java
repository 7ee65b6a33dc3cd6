package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.abort;

import com.pty4j.unix.Pty;
import datumpeg.bridge.link.ble.peer.BluezPeer;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import datumpeg.bridge.link.ble.peer.PrivateBus;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A session, in a process of its own, whose record lies on a disk that only this process has. */
abstract class SessionOnOwnDisk {
  static final String NOTHING = "true";

  @TempDir Path folder;
  private final Deque<AutoCloseable> opened = new ArrayDeque<>();
  private @Nullable OwnMount running;

  /** Closed when the test ends, the last one first. */
  void closesAtTheEnd(AutoCloseable it) {
    opened.push(it);
  }

  void runs(OwnMount started) {
    opened.push(started);
    running = started;
  }

  @BeforeEach
  void open() throws Exception {
    OwnMount.assumePossible("mount -t tmpfs none " + folder);
    SiteFolder site = new SiteFolder(folder);
    site.write("shed.toml", CollectCommandTest.JOB);
    assertEquals(0, site.console.run("job", "add", "shed.toml"), site.console.err());
  }

  @AfterEach
  void close() throws Exception {
    while (!opened.isEmpty()) {
      opened.pop().close();
    }
  }

  OwnMount mount() {
    return Objects.requireNonNull(running);
  }

  void start(
      String disk, String then, Class<?> program, Map<String, String> environment, String... words)
      throws IOException {
    runs(OwnMount.start(folder, disk, then, program, environment, words));
  }

  void until(String what, BooleanSupplier happened) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!happened.getAsBoolean()) {
      assertTrue(
          System.nanoTime() < deadline, "waited too long until " + what + ": " + mount().said());
      LockSupport.parkNanos(10_000_000);
    }
  }

  void untilSaid(String words) {
    until("it says: " + words, () -> mount().said().contains(words) || !mount().isAlive());
    assertTrue(mount().said().contains(words), mount().said());
  }

  /** Longer than it takes {@link HurriedProgram} to tell values apart, and to try again. */
  static void aMomentPasses() {
    LockSupport.parkNanos(200_000_000);
  }

  static void send(Pty port, String text) throws IOException {
    aMomentPasses();
    port.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
    port.getOutputStream().flush();
  }

  /** They are tried again with what comes after a pause, whatever it is. */
  void untilRawBytesAreKept(Pty port) throws IOException {
    aMomentPasses();
    send(port, "ready\r\n");
    untilSaid("the raw bytes are kept again");
  }

  Pty measure(String disk) throws IOException {
    return measure(disk, NOTHING, HurriedProgram.class);
  }

  Pty measure(String disk, String then, Class<?> program) throws IOException {
    Pty port = new Pty();
    opened.push(port::close);
    start(
        disk,
        then,
        program,
        Map.of(),
        "measure",
        "larkrise-01",
        "--stage",
        "arrival",
        "--silent",
        "--link",
        "serial:" + port.getSlaveName());
    untilSaid("Measure ");
    return port;
  }

  /** Collects with the tests' own Bluetooth service and its meter. */
  InventedMeter collecting(String disk) throws Exception {
    PrivateBus.obstacle().ifPresent(obstacle -> abort(obstacle));
    PrivateBus bus = PrivateBus.start(folder);
    opened.push(bus);
    BluezPeer peer = BluezPeer.start(bus.address());
    opened.push(peer);
    InventedMeter meter = InventedMeter.describingItself(peer);
    start(
        disk,
        NOTHING,
        HurriedProgram.class,
        Map.of("DBUS_SYSTEM_BUS_ADDRESS", bus.address()),
        "collect",
        "larkrise-01",
        "--stage",
        "arrival",
        "--link",
        BleSite.link(BleSite.BLUEZ));
    untilSaid(BleSite.link(BleSite.BLUEZ) + " is there");
    return meter;
  }

  /** Until a value is a reading: by the capture, in which an act follows the bytes it is about. */
  void untilTaken(double metres) {
    String bytes = InventedMeter.bytes(Math.round(metres * 10_000)).hex();
    until(
        metres + " m is taken",
        () -> {
          String capture = capture();
          int came = capture.indexOf(bytes);
          return came >= 0 && capture.indexOf("accept", came) >= 0;
        });
  }

  private String capture() {
    try (Stream<Path> files = Files.list(mount().inside("captures"))) {
      Optional<Path> capture =
          files.filter(file -> file.toString().endsWith(".capture.jsonl")).findFirst();
      return capture.isEmpty() ? "" : WrittenMeanwhile.text(capture.get());
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  /** The disk as it was when the program had ended. */
  TestConsole after() throws IOException {
    return new TestConsole(folder.resolve("after"));
  }

  List<String> stored() throws IOException {
    return BleSite.readings(after()).stream().map(ReadingEntry::value).toList();
  }

  boolean isThere(String file) throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("after/captures"))) {
      return files.anyMatch(one -> one.toFile().getName().contains(file));
    }
  }

  /** Where readings wait that the disk of the record does not take. */
  Path spare() {
    return folder.resolve("after/state/datumpeg/waiting");
  }

  long spareFiles() throws IOException {
    if (!Files.exists(spare())) {
      return 0;
    }
    try (Stream<Path> files = Files.list(spare())) {
      return files.count();
    }
  }
}
