package datumpeg.bridge.cli;

import static datumpeg.bridge.cli.BleSite.BLUEZ;
import static datumpeg.bridge.cli.BleSite.TINYB;
import static datumpeg.bridge.cli.BleSite.link;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.jobfile.JobTexts;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code watch} with a Bluetooth LE meter of the peer's, over either backend. */
class BleWatchTest {
  private static final String SPACING = "base.A1-base.A2";

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

  @ParameterizedTest
  @ValueSource(strings = {BLUEZ, TINYB})
  void everyValueIsShownAndTheOneConfirmedIsKept(String backend) throws Exception {
    InventedMeter meter = InventedMeter.describingItself(site.peer);
    try (PipedOutputStream keyboard = new PipedOutputStream();
        PipedInputStream typed = new PipedInputStream(keyboard)) {
      CompletableFuture<Integer> ended =
          site.running(typed, "Watching", "watch", BleSite.JOB, SPACING, "--link", link(backend));
      assertTrue(meter.measures(5.985), site.console.err());
      site.until("the first is shown", () -> site.console.err().contains("5.9850 m"));
      meter.device().drop();
      site.until("it is back", () -> site.console.err().contains(link(backend) + " is there"));
      BleSite.aMomentPasses();
      assertTrue(meter.measures(5.9995));
      site.until("the second is shown", () -> site.console.err().contains("5.9995 m"));
      keyboard.write("keep\n".getBytes(StandardCharsets.UTF_8));
      keyboard.flush();
      assertEquals(0, ended.get(60, TimeUnit.SECONDS), site.console.err());
    }
    assertEquals(List.of("5.9995"), BleSite.inForce(site.console));
    assertTrue(site.console.out().contains("one reading kept"), site.console.out());
  }
}
