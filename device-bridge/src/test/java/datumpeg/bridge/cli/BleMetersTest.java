package datumpeg.bridge.cli;

import static datumpeg.bridge.cli.BleSite.BLUEZ;
import static datumpeg.bridge.cli.BleSite.link;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.jobfile.JobTexts;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code meters list} and {@code meters watch} with a Bluetooth LE meter of the peer's. */
class BleMetersTest {
  @TempDir Path folder;
  private BleSite site;

  @BeforeEach
  void open() throws Exception {
    site = BleSite.open(folder, JobTexts.LARKRISE);
  }

  @AfterEach
  void close() {
    if (site != null) {
      site.close();
    }
  }

  @Test
  void metersListNamesWhatIsHeardAndNothingOfItSteersTheTerminal() {
    InventedMeter.describingItself(site.peer);
    assertEquals(0, site.console.run("meters", "list", "--scan", "1"), site.console.err());
    assertTrue(
        site.console.out().contains(link(BLUEZ) + "  Shed Rule?[2J -58 dBm"), site.console.out());
    assertFalse(site.console.out().contains("\u001b"), "an escape reached the screen");
    assertEquals(0, site.console.run("--json", "meters", "list", "--scan", "1"));
    assertTrue(site.console.out().contains("\"" + link(BLUEZ) + "\""), site.console.out());
    site.peer.adapter().powerOff();
    assertEquals(0, site.console.run("meters", "list", "--scan", "1"));
    assertTrue(site.console.err().contains("hci0 is switched off"), site.console.err());
    assertEquals(2, site.console.run("meters", "list", "--scan", "61"));
  }

  @Test
  void metersWatchShowsTheBytesOfEachCharacteristic() throws Exception {
    InventedMeter meter = InventedMeter.describingItself(site.peer);
    CompletableFuture<Integer> ended =
        site.running("Watching " + link(BLUEZ), "meters", "watch", "--wait", "1", link(BLUEZ));
    assertTrue(meter.measures(18.0035), site.console.err());
    site.until("the bytes are shown", () -> site.console.out().contains("43 bf 02 00"));
    assertTrue(site.console.out().contains("from " + InventedMeter.DISTANCE), site.console.out());
    meter.device().goOffAir();
    assertEquals(3, ended.get(60, TimeUnit.SECONDS), site.console.err());
  }
}
