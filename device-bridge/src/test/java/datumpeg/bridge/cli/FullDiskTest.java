package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Live meters while the disk of the record is really full, or really turns read-only. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "mount namespaces are of Linux")
class FullDiskTest {
  private static final String SMALL_DISK = "mount -t tmpfs -o size=2m none $DISK";

  /** A file system that turns read-only when it finds an error in itself, as most are set to. */
  private static final String IMAGE_DISK = "mount -o loop,errors=remount-ro image $DISK";

  @TempDir Path folder;
  private final Deque<AutoCloseable> opened = new ArrayDeque<>();
  private @Nullable OwnMount running;

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

  private OwnMount mount() {
    return Objects.requireNonNull(running);
  }

  private void start(String disk, Map<String, String> environment, String... words)
      throws IOException {
    OwnMount started = OwnMount.start(folder, disk, environment, words);
    opened.push(started);
    running = started;
  }

  private void until(String what, BooleanSupplier happened) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!happened.getAsBoolean()) {
      assertTrue(
          System.nanoTime() < deadline, "waited too long until " + what + ": " + mount().said());
      LockSupport.parkNanos(10_000_000);
    }
  }

  private void untilSaid(String words) {
    until("it says: " + words, () -> mount().said().contains(words) || !mount().isAlive());
    assertTrue(mount().said().contains(words), mount().said());
  }

  private static void send(Pty port, String text) throws IOException {
    BleSite.aMomentPasses();
    port.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
    port.getOutputStream().flush();
  }

  private Pty measure(String disk) throws IOException {
    Pty port = new Pty();
    opened.push(port::close);
    start(
        disk,
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

  /** The disk as it was when the program had ended. */
  private TestConsole after() throws IOException {
    return new TestConsole(folder.resolve("after"));
  }

  private List<String> stored() throws IOException {
    return BleSite.readings(after()).stream().map(ReadingEntry::value).toList();
  }

  private boolean isThere(String file) throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("after/captures"))) {
      return files.anyMatch(one -> one.toFile().getName().contains(file));
    }
  }

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
    assertTrue(mount().said().contains("keep the program running"), mount().said());
    mount().makeRoom();
    untilSaid("what waited is stored now");
    send(port, "9.002 m\r\n");
    untilSaid("recorded 9.002 m");
    untilSaid("the raw bytes are kept again");
    mount().type("quit\n");
    assertEquals(0, mount().ended(), mount().said());
    assertEquals(List.of("18.001", "21.470", "9.002"), stored());
    assertFalse(isThere("waiting-"), "nothing waits any longer");
    assertEquals(0, after().run("verify"), mount().said());
  }

  @Test
  void aSessionThatFindsTheDiskFullSaysThatItIs() throws Exception {
    start(
        SMALL_DISK + " && cp record.db $DISK && (cat /dev/zero > $DISK/filler 2>/dev/null || true)",
        Map.of(),
        "job",
        "list");
    assertEquals(3, mount().ended());
    assertTrue(mount().said().contains("the disk is full"), mount().said());
  }

  @Test
  void aLoggerWithABluetoothMeterOutlivesAFullDisk() throws Exception {
    PrivateBus.obstacle().ifPresent(obstacle -> abort(obstacle));
    PrivateBus bus = PrivateBus.start(folder);
    opened.push(bus);
    BluezPeer peer = BluezPeer.start(bus.address());
    opened.push(peer);
    InventedMeter meter = InventedMeter.describingItself(peer);
    start(
        SMALL_DISK,
        Map.of("DBUS_SYSTEM_BUS_ADDRESS", bus.address()),
        "collect",
        "larkrise-01",
        "--stage",
        "arrival",
        "--link",
        BleSite.link(BleSite.BLUEZ));
    untilSaid(BleSite.link(BleSite.BLUEZ) + " is there");
    mount().fill();
    assertTrue(meter.measures(20.126));
    untilSaid("NOT STORED YET: 1 wait(s)");
    BleSite.aMomentPasses();
    assertTrue(meter.measures(7.123)); // of no target: a row of the table
    mount().makeRoom();
    untilSaid("What waited is stored now.");
    BleSite.aMomentPasses();
    assertTrue(meter.measures(21.47));
    BleSite.aMomentPasses();
    mount().terminate();
    assertEquals(143, mount().ended(), mount().said());
    assertEquals(List.of("20.1260", "21.4700"), stored());
    assertTrue(isThere(".unassigned.csv"), "the value without a target is in its table");
    assertEquals(0, after().run("verify"), mount().said());
  }

  @Test
  void aDiskThatTurnsReadOnlyIsSaidAndWhatWaitsIsKeptOnceItIsRepaired() throws Exception {
    Files.write(folder.resolve("image"), new byte[16 << 20]);
    String make = "mkfs.ext4 -q -F image && ";
    OwnMount.assumePossible(
        "cd " + folder + " && mkdir -p disk && DISK=disk && " + make + IMAGE_DISK);
    Pty port = measure(make + IMAGE_DISK);
    send(port, "18.001 m\r\n");
    untilSaid("recorded 18.001 m");
    // The system's own way to try what it does on finding an error in the file system.
    mount()
        .run(
            "loop=$(findmnt -n -o SOURCE $DISK); echo 1 > /sys/fs/ext4/${loop#/dev/}/trigger_fs_error");
    send(port, "21.470 m\r\n");
    untilSaid("NOT STORED YET: 1 wait(s), at most 500 may");
    assertTrue(mount().said().contains("keep the program running"), mount().said());
    // As a person does who takes the disk out and has it repaired. What is open stays broken.
    mount().run("umount -l $DISK; cp image repaired; e2fsck -fy repaired || [ $? -le 2 ]");
    mount().run("mount -o loop repaired $DISK");
    untilSaid("They are kept beside the captures too.");
    mount().type("quit\n");
    assertEquals(3, mount().ended(), mount().said());
    assertTrue(isThere("waiting-"));
    TestConsole next = after();
    assertEquals(
        0,
        next.runWithInput("quit\n", "measure", "larkrise-01", "--stage", "arrival"),
        () -> next.err());
    assertEquals(List.of("18.001", "21.470"), stored().stream().sorted().toList());
    assertFalse(isThere("waiting-"));
    assertEquals(0, after().run("verify"));
  }
}
