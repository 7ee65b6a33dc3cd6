package datumpeg.bridge.cli;

import static datumpeg.bridge.cli.BleSite.BLUEZ;
import static datumpeg.bridge.cli.BleSite.TINYB;
import static datumpeg.bridge.cli.BleSite.link;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.jobfile.JobTexts;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.io.InputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code measure} with a Bluetooth LE meter of the peer's, over either backend. */
class BleMeasuringTest {
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

  /** Ends two seconds after the meter went away. */
  private CompletableFuture<Integer> measuring(String backend) {
    return measuring(InputStream.nullInputStream(), backend);
  }

  /** The same; while somebody may type, it waits for a meter that is away. */
  private CompletableFuture<Integer> measuring(InputStream typed, String backend) {
    return site.running(
        typed,
        "Measure from",
        "measure",
        BleSite.JOB,
        "--stage",
        "arrival",
        "--wait",
        "2",
        "--link",
        link(backend));
  }

  private static List<String> essence(TestConsole console) {
    return BleSite.readings(console).stream()
        .map(one -> String.join(" ", one.target(), one.value(), one.unit(), one.raw(), one.link()))
        .toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {BLUEZ, TINYB})
  void aMeterThatDescribesItselfNeedsNoProfileAndItsCaptureReplays(String backend)
      throws Exception {
    InventedMeter meter = InventedMeter.describingItself(site.peer);
    CompletableFuture<Integer> ended = measuring(backend);
    site.until(
        "the battery is said", () -> site.console.err().contains("the meter's battery is at 87 %"));
    assertTrue(meter.measures(18.0035));
    site.untilRecorded(1);
    BleSite.aMomentPasses();
    assertTrue(meter.measures(20.126));
    site.untilRecorded(2);
    meter.device().goOffAir();
    assertEquals(3, ended.get(60, TimeUnit.SECONDS), site.console.err());

    assertTrue(
        site.console.err().contains(InventedMeter.ADDRESS + " was lost"), site.console.err());
    List<ReadingEntry> stored = site.readings();
    assertEquals(List.of("18.0035", "20.1260"), stored.stream().map(ReadingEntry::value).toList());
    assertEquals("m", stored.get(0).unit());
    assertEquals(link(backend), stored.get(0).link());
    assertEquals("43bf0200", stored.get(0).raw(), "the bytes as they came");

    TestConsole elsewhere = site.replayed(JobTexts.LARKRISE);
    assertEquals(essence(site.console), essence(elsewhere));
  }

  @ParameterizedTest
  @ValueSource(strings = {BLUEZ, TINYB})
  void onlyTheMeterThatWasAllowedIsHeardWhateverAnotherDeviceClaimsToBe(String backend)
      throws Exception {
    InventedMeter meter = InventedMeter.describingItself(site.peer);
    InventedMeter pretender = InventedMeter.pretending(site.peer);
    CompletableFuture<Integer> ended = measuring(backend);
    pretender.device().Connect();
    for (int i = 0; i < 10; i++) {
      pretender.distance().sendToAnybody(InventedMeter.bytes(180_100 + i));
    }
    assertTrue(meter.measures(18.0035));
    site.untilRecorded(1);
    assertFalse(pretender.measures(18.2), "nobody listens to it");
    meter.device().goOffAir();
    assertEquals(3, ended.get(60, TimeUnit.SECONDS), site.console.err());
    assertEquals(List.of("18.0035"), BleSite.inForce(site.console));
    assertFalse(site.console.err().contains("HELD"), site.console.err());
    assertEquals(0, pretender.distance().subscriptionCount());
  }

  @ParameterizedTest
  @ValueSource(strings = {BLUEZ, TINYB})
  void textCutIntoNotificationsIsReadWhole(String backend) throws Exception {
    InventedMeter meter = InventedMeter.ofText(site.peer);
    CompletableFuture<Integer> ended = measuring(backend);
    meter.says("Distance to the far corner: 18.0035 m\r\n");
    site.untilRecorded(1);
    meter.device().goOffAir();
    assertEquals(3, ended.get(60, TimeUnit.SECONDS), site.console.err());
    assertEquals("18.0035", site.readings().get(0).value());
  }

  @ParameterizedTest
  @ValueSource(strings = {BLUEZ, TINYB})
  void valuesKeptBackAreHeldAndAMessageDeliveredTwiceIsOne(String backend) throws Exception {
    InventedMeter meter = InventedMeter.describingItself(site.peer);
    CompletableFuture<Integer> ended = measuring(backend);
    meter.measures(18.003);
    meter.measures(20.126);
    meter.measures(9.001);
    site.until("the burst is held", () -> heldCount() == 2);
    assertTrue(site.console.err().contains("within a second of another"), site.console.err());
    int slow = 0;
    while (!isSaidToBeOne(meter, 18.004 + 0.001 * slow)) {
      slow++;
      assertTrue(slow < 5, site.console.err());
    }
    BleSite.aMomentPasses();
    meter.measures(20.1255);
    site.untilRecorded(3 + slow);
    meter.device().goOffAir();
    ended.get(60, TimeUnit.SECONDS);
    assertEquals(List.of("18.00%d0".formatted(4 + slow), "20.1255"), BleSite.inForce(site.console));

    TestConsole elsewhere = site.replayed(JobTexts.LARKRISE);
    assertEquals(BleSite.inForce(site.console), BleSite.inForce(elsewhere));
  }

  /** False where this machine was so busy that the two came apart, which makes them a burst. */
  private boolean isSaidToBeOne(InventedMeter meter, double metres) {
    BleSite.aMomentPasses();
    int held = heldCount();
    meter.measures(metres);
    meter.measures(metres);
    site.until("the second is said", () -> isSaidToBeOne() || heldCount() > held);
    return isSaidToBeOne();
  }

  private boolean isSaidToBeOne() {
    return site.console.err().contains("the same message again");
  }

  private int heldCount() {
    return site.console.err().split("HELD: ", -1).length - 1;
  }

  @ParameterizedTest
  @ValueSource(strings = {BLUEZ, TINYB})
  void aMeterThatWentAwayIsReachedAgainAndTheSessionGoesOn(String backend) throws Exception {
    assertGoesOn(backend, meter -> meter.device().drop());
  }

  private interface Blow {
    void strike(InventedMeter meter) throws Exception;
  }

  /** The link is lost, comes back, however long that takes, and the next target is measured. */
  private void assertGoesOn(String backend, Blow blow) throws Exception {
    InventedMeter meter = InventedMeter.describingItself(site.peer);
    try (PipedOutputStream keyboard = new PipedOutputStream();
        PipedInputStream typed = new PipedInputStream(keyboard)) {
      CompletableFuture<Integer> ended = measuring(typed, backend);
      assertTrue(meter.measures(18.0035));
      site.untilRecorded(1);
      blow.strike(meter);
      site.until(
          "the return is said", () -> site.console.err().contains(link(backend) + " is there"));
      assertTrue(site.console.err().contains("was lost"), site.console.err());
      BleSite.aMomentPasses();
      assertTrue(meter.measures(20.126));
      site.untilRecorded(2);
      keyboard.write("quit\n".getBytes(StandardCharsets.UTF_8));
      keyboard.flush();
      assertEquals(0, ended.get(60, TimeUnit.SECONDS), site.console.err());
    }
    assertEquals(List.of("18.0035", "20.1260"), BleSite.inForce(site.console));
  }

  @Test
  void aCrashOfTheNativeLibraryIsALostLinkAndTheSessionGoesOn() throws Exception {
    assertGoesOn(TINYB, BleSite::crash);
    assertEquals(0, site.console.run("verify"), site.console.err());
  }

  @Test
  void aMeterThatIsNotThereIsSaidBeforeAnythingIsMeasured() {
    site.peer.device("C0:FF:EE:00:00:02", "Other");
    assertEquals(
        3, site.console.run("measure", "larkrise-01", "--stage", "arrival", "--link", link(BLUEZ)));
    assertTrue(site.console.err().contains("was not heard within 3 s"), site.console.err());
    assertTrue(site.console.err().contains("C0:FF:EE:00:00:02 Other"), site.console.err());
  }
}
