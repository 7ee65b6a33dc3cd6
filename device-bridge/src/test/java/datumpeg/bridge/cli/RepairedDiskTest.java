package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import java.nio.file.Files;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

/** Live meters while the disk of the record really turns read-only, and is repaired or not. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "mount namespaces are of Linux")
class RepairedDiskTest extends SessionOnOwnDisk {
  /** A file system that turns read-only when it finds an error in itself, as most are set to. */
  private static final String IMAGE_DISK = "mount -o loop,errors=remount-ro image $DISK";

  /** The system's own way to try what it does on finding an error in the file system. */
  private void breakDisk() throws Exception {
    mount()
        .run(
            "loop=$(findmnt -n -o SOURCE $DISK); echo 1 > /sys/fs/ext4/${loop#/dev/}/trigger_fs_error");
  }

  /** As a person does who takes the disk out and repairs it: it must not be busy. */
  private void repairDisk() throws Exception {
    mount()
        .run(
            "for attempt in $(seq 100); do umount $DISK && break; sleep 0.1; done;"
                + " e2fsck -fy image || [ $? -le 2 ]; mount -o loop image $DISK");
  }

  private String imageDisk() throws Exception {
    Files.write(folder.resolve("image"), new byte[16 << 20]);
    String make = "mkfs.ext4 -q -F image && ";
    OwnMount.assumePossible(
        "cd " + folder + " && mkdir -p disk && DISK=disk && " + make + IMAGE_DISK);
    return make + IMAGE_DISK;
  }

  @Test
  void aDiskThatTurnsReadOnlyIsRepairedUnderTheSessionWhichStoresWhatWaited() throws Exception {
    Pty port = measure(imageDisk());
    send(port, "18.001 m\r\n");
    untilSaid("recorded 18.001 m");
    breakDisk();
    send(port, "21.470 m\r\n");
    untilSaid("NOT STORED YET: 1 wait(s), at most 500 may");
    assertTrue(mount().said().contains("They are kept in " + spare()), mount().said());
    repairDisk();
    untilSaid("what waited is stored now");
    assertEquals(0, spareFiles());
    send(port, "9.002 m\r\n");
    untilSaid("recorded 9.002 m");
    untilRawBytesAreKept(port);
    mount().type("quit\n");
    assertEquals(0, mount().ended(), mount().said());
    assertEquals(List.of("18.001", "21.470", "9.002"), stored());
    assertFalse(isThere("waiting-"));
    assertEquals(0, after().run("verify"));
  }

  @Test
  void aDiskThatIsNotRepairedIsSaidAndTheNextSessionStoresWhatWaited() throws Exception {
    Pty port = measure(imageDisk());
    send(port, "18.001 m\r\n");
    untilSaid("recorded 18.001 m");
    breakDisk();
    send(port, "21.470 m\r\n");
    untilSaid("NOT STORED YET: 1 wait(s), at most 500 may");
    mount().type("quit\n");
    assertEquals(3, mount().ended(), mount().said());
    assertTrue(mount().said().contains("they wait in " + spare()), mount().said());
    TestConsole next = after();
    assertEquals(
        0,
        next.runWithInput("quit\n", "measure", "larkrise-01", "--stage", "arrival"),
        () -> next.err());
    assertEquals(List.of("18.001", "21.470"), stored().stream().sorted().toList());
    assertEquals(0, spareFiles());
    assertEquals(0, after().run("verify"));
  }

  @Test
  void aLoggerWithABluetoothMeterOutlivesADiskThatIsRepairedUnderIt() throws Exception {
    InventedMeter meter = collecting(imageDisk());
    assertTrue(meter.measures(20.126));
    untilTaken(20.126);
    aMomentPasses();
    breakDisk();
    assertTrue(meter.measures(21.47));
    untilSaid("NOT STORED YET: 1 wait(s)");
    repairDisk();
    untilSaid("What waited is stored now.");
    aMomentPasses();
    assertTrue(meter.measures(9.002));
    untilTaken(9.002);
    mount().terminate();
    assertEquals(143, mount().ended(), mount().said());
    assertEquals(List.of("20.1260", "21.4700", "9.0020"), stored());
    assertEquals(0, after().run("verify"), mount().said());
  }
}
