package datumpeg.desktop.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import datumpeg.bridge.collect.Guide;
import datumpeg.bridge.collect.LiveLinks;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.ble.peer.BluezPeer;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import datumpeg.bridge.link.ble.peer.PeerDevice;
import datumpeg.bridge.link.ble.peer.PrivateBus;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import datumpeg.desktop.app.SampleJob;
import datumpeg.desktop.measure.MeasurePage.Listening;
import datumpeg.desktop.measure.MeasurePage.Running;
import datumpeg.desktop.measure.SessionShot.LinkStand;
import datumpeg.desktop.text.Words;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Measuring with a Bluetooth LE meter of an invented Bluetooth service on a bus of its own. */
class BleMeterTest {
  private static final String METER = "ble:" + InventedMeter.ADDRESS;

  @TempDir Path folder;
  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private PrivateBus bus;
  private BluezPeer peer;
  private RecordSessions sessions;
  private MeasureViewModel model;

  @BeforeEach
  void open() throws Exception {
    PrivateBus.obstacle().ifPresent(obstacle -> assumeTrue(false, obstacle));
    bus = PrivateBus.start(folder);
    peer = BluezPeer.start(bus.address());
    SampleJob sample = SampleJob.of("larkrise-01", file());
    sample.run(sample.steps().get(0));
    Words words = Words.of(Locale.ROOT);
    sessions =
        new RecordSessions(
            file(),
            "test",
            Clock.systemUTC(),
            ZoneOffset.UTC,
            words,
            screen::add,
            LiveLinks.of(Map.of("DBUS_SYSTEM_BUS_ADDRESS", bus.address())));
    model = new MeasureViewModel(words, sessions, kept -> {});
    model.shown(true);
    model.choose("larkrise-01", "arrival");
  }

  @AfterEach
  void close() {
    if (bus != null) {
      sessions.close();
      peer.close();
      bus.close();
    }
  }

  private Path file() {
    return folder.resolve("site.db");
  }

  private void until(String what, BooleanSupplier holds) {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!holds.getAsBoolean()) {
      try {
        Runnable next = screen.poll(100, TimeUnit.MILLISECONDS);
        if (next != null) {
          next.run();
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      assertTrue(System.nanoTime() < end, () -> what + " did not come about: " + page());
    }
  }

  private MeasurePage page() {
    return model.page().get();
  }

  private Listening listening() {
    return page().listening();
  }

  private Running running() {
    return page().running().orElseThrow();
  }

  private LinkStand link() {
    return running().links().get(0);
  }

  private void begin(String link) {
    model.begin(
        new SessionWish(
            "larkrise-01",
            "arrival",
            "",
            Guide.Order.LISTED,
            OptionalInt.empty(),
            "Ines",
            List.of(new SessionWish.LinkWish(link, "self-describing"))));
  }

  /** Values within a second of one another would be held. */
  private static void aMomentPasses() {
    LockSupport.parkNanos(1_100_000_000L);
  }

  private List<ReadingEntry> recorded() {
    try (SiteRecord record = SqliteRecords.open(file(), SqliteRecords.Mode.READ)) {
      return record.log(StoredJob.find(record, "larkrise-01")).inForce().stream()
          .map(row -> row.entry())
          .toList();
    }
  }

  @Test
  void aMeterIsHeardChosenAndMeasuredWithAndItsBatteryAndItsLossAreSaid() {
    InventedMeter meter = InventedMeter.describingItself(peer);
    PeerDevice neighbour = peer.device("C0:FF:EE:00:00:02", "Neighbour");
    model.listen();
    assertTrue(listening().going());
    until("two are heard", () -> listening().heard().size() == 2);
    assertEquals(METER, listening().heard().get(0).address());
    assertEquals("Shed Rule?[2J -58 dBm", listening().heard().get(0).description());
    assertEquals(0, meter.device().connectionCount(), "listening connected to a meter");

    begin(METER);
    until(
        "the battery is said",
        () ->
            page().running().isPresent()
                && !running().links().isEmpty()
                && link().status().contains("87 %"));
    assertTrue(meter.measures(18.0035));
    until("it is recorded", () -> running().big().equals("18.0035 m"));
    assertEquals(METER, recorded().get(0).link());
    assertEquals("43bf0200", recorded().get(0).raw(), "the bytes as they came");

    meter.device().goOffAir();
    until("the loss is said", () -> link().isLost());
    assertTrue(running().trouble().contains(InventedMeter.ADDRESS), running().trouble());
    meter.device().comeOnAir();
    until("it is there again", () -> !link().isLost());
    aMomentPasses();
    until("it is subscribed to again", () -> meter.measures(20.126));
    until("the next is recorded", () -> running().big().equals("20.1260 m"));
    assertEquals(0, neighbour.connectionCount(), "a meter nobody chose was connected to");
  }

  @Test
  void listeningCanBeStoppedAndWhatWasHeardStays() {
    InventedMeter.describingItself(peer);
    model.listen();
    until("it is heard", () -> listening().heard().size() == 1);
    model.listen();
    assertEquals(false, listening().going());
    assertEquals(1, listening().heard().size());
  }

  @Test
  void whyNothingIsHeardIsSaid() {
    peer.adapter().powerOff();
    model.listen();
    until("it is said", () -> !listening().going());
    assertTrue(listening().sentence().contains("hci0 is switched off"), listening().sentence());
    begin(METER);
    until("the session says so too", () -> page().running().isEmpty());
    assertTrue(page().sentence().contains("hci0 is switched off"), page().sentence());
  }
}
