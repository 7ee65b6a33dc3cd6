package datumpeg.bridge.link.ble;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import datumpeg.bridge.link.ble.BleCampaign.Result;
import datumpeg.bridge.link.ble.bluez.BluezBackend;
import datumpeg.bridge.link.ble.peer.BluezPeer;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import datumpeg.bridge.link.ble.peer.PrivateBus;
import datumpeg.bridge.link.ble.tinyb.TinybBackend;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The short form of the campaign; the profile {@code soak} runs the long one and appends the rows
 * of docs/benchmarks/soak-ble.md to the file it names.
 */
@Timeout(value = 30, unit = TimeUnit.MINUTES)
class BleCampaignTest {
  private static final int CYCLES = Integer.getInteger("datumpeg.soak.cycles", 10);
  private static final int KILLS = Integer.getInteger("datumpeg.soak.kills", 2);

  private static final Patience PATIENCE =
      new Patience(Duration.ofSeconds(10), Duration.ofSeconds(20), Duration.ofSeconds(10));

  @TempDir Path folder = Path.of("");
  private PrivateBus bus;
  private BluezPeer peer;
  private InventedMeter meter;

  @BeforeEach
  void open() throws Exception {
    PrivateBus.obstacle().ifPresent(obstacle -> assumeTrue(false, obstacle));
    bus = PrivateBus.start(folder);
    peer = BluezPeer.start(bus.address());
    meter = InventedMeter.describingItself(peer);
  }

  @AfterEach
  void close() {
    if (bus != null) {
      peer.close();
      bus.close();
    }
  }

  private static void say(String row) throws IOException {
    String file = System.getProperty("datumpeg.soak.rows", "");
    if (!file.isEmpty()) {
      Files.writeString(
          Path.of(file), row + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }
  }

  private void assertSurvives(
      String name, BleBackend backend, int underWay, int blows, BleCampaign.Blow blow)
      throws Exception {
    Result result = new BleCampaign(meter, backend, underWay).run(blows, blow);
    say(result.row(name));
    assertTrue(result.isWhole(), result.toString());
  }

  @Test
  void everyDisconnectIsSurvivedOverBluez() throws Exception {
    assertSurvives(
        "bluez, disconnected",
        new BluezBackend(bus.address(), PATIENCE),
        2,
        CYCLES,
        () -> meter.device().drop());
  }

  @Test
  void everyDisconnectIsSurvivedOverTinyb() throws Exception {
    assertSurvives(
        "tinyb, disconnected",
        new TinybBackend(bus.address(), PATIENCE),
        2,
        CYCLES,
        () -> meter.device().drop());
  }

  @Test
  void aNativeProcessThatCrashesIsALostLinkAndNeverALostLogger() throws Exception {
    // What a process had not passed on dies with it: no value is under way here.
    assertSurvives(
        "tinyb, child killed by signal 11",
        new TinybBackend(bus.address(), PATIENCE),
        0,
        KILLS,
        this::crash);
  }

  private void crash() throws IOException, InterruptedException {
    NativeProcess.crash();
    // The daemon ends the subscriptions of a client that left the bus; the connection it leaves.
    meter.distance().forget();
  }
}
