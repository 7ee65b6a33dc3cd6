package datumpeg.bridge.cli;

import static datumpeg.bridge.cli.BleSite.BLUEZ;
import static datumpeg.bridge.cli.BleSite.TINYB;
import static datumpeg.bridge.cli.BleSite.link;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.collect.LiveMeasuring;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code collect} with a Bluetooth LE meter of the peer's, over either backend. */
class BleUnattendedTest {
  @TempDir Path folder;
  private final List<Thread> running = new ArrayList<>();
  private BleSite site;

  @BeforeEach
  void open() throws Exception {
    site = BleSite.open(folder, CollectCommandTest.JOB);
  }

  @AfterEach
  void close() throws InterruptedException {
    end();
    if (site != null) {
      site.close();
    }
  }

  /** Until it is interrupted: how long a loaded machine takes for a return is not known. */
  private void collecting(String backend, String shown) {
    Thread thread =
        new Thread(
            () ->
                site.console.run(
                    "collect", BleSite.JOB, "--stage", "arrival", "--link", link(backend)));
    running.add(thread);
    thread.start();
    site.until(shown, () -> site.console.err().contains(shown));
  }

  private void end() throws InterruptedException {
    for (Thread thread : running) {
      thread.interrupt();
      thread.join();
    }
  }

  private void untilRecorded(int count) {
    site.until(count + " readings are recorded", () -> site.readings().size() == count);
  }

  private void untilThereAgain(String backend) {
    site.until(
        "the return is said",
        () -> site.console.err().split(Pattern.quote(link(backend) + " is there"), -1).length == 3);
  }

  private void assertBothAreKept() throws Exception {
    end();
    assertEquals(
        List.of("slab.A4-slab.B1 20.1260", "slab.A1-slab.B4 21.4700"),
        site.readings().stream().map(one -> one.target() + " " + one.value()).toList());
    assertEquals(
        site.readings().stream().map(ReadingEntry::target).toList(),
        BleSite.readings(site.replayed(CollectCommandTest.JOB)).stream()
            .map(ReadingEntry::target)
            .toList());
    assertEquals(0, site.console.run("verify"), site.console.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {BLUEZ, TINYB})
  void whatHasOneTargetIsRecordedBeforeAndAfterTheMeterWasAway(String backend) throws Exception {
    InventedMeter meter = InventedMeter.describingItself(site.peer);
    collecting(backend, link(backend) + " is there");
    assertTrue(meter.measures(20.126));
    untilRecorded(1);
    meter.device().drop();
    untilThereAgain(backend);
    assertTrue(site.console.err().contains("was lost"), site.console.err());
    BleSite.aMomentPasses();
    assertTrue(meter.measures(21.47));
    untilRecorded(2);
    assertBothAreKept();
    assertEquals(link(backend), site.readings().get(1).link());
  }

  @Test
  void aCrashOfTheNativeLibraryDoesNotEndTheLogger() throws Exception {
    InventedMeter meter = InventedMeter.describingItself(site.peer);
    collecting(TINYB, link(TINYB) + " is there");
    assertTrue(meter.measures(20.126));
    untilRecorded(1);
    BleSite.crash(meter);
    untilThereAgain(TINYB);
    BleSite.aMomentPasses();
    assertTrue(meter.measures(21.47));
    untilRecorded(2);
    assertBothAreKept();
  }

  @Test
  void aMeterThatIsNotThereYetIsAwaitedAndWhatIsNotBeyondDoubtWaits() throws Exception {
    collecting(TINYB, "was not heard");
    InventedMeter meter = InventedMeter.describingItself(site.peer);
    site.until("it is there", () -> site.console.err().contains(link(TINYB) + " is there"));
    BleSite.aMomentPasses();
    assertTrue(meter.measures(7.123));
    Path table = LiveMeasuring.unassignedFile(site.capture());
    site.until("a row waits for a person", () -> Files.exists(table));
    end();
    assertEquals(0, site.readings().size());
  }
}
