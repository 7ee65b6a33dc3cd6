package datumpeg.bridge.link.ble;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import datumpeg.bridge.link.RecordingListener;
import datumpeg.bridge.link.ble.peer.BluezPeer;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import datumpeg.bridge.link.ble.peer.PeerCharacteristic;
import datumpeg.bridge.link.ble.peer.PeerDevice;
import datumpeg.bridge.link.ble.peer.PeerService;
import datumpeg.bridge.link.ble.peer.PrivateBus;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.connections.impl.DBusConnectionBuilder;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.interfaces.Peer;
import org.freedesktop.dbus.interfaces.Properties.PropertiesChanged;
import org.freedesktop.dbus.types.Variant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What every backend does, against one {@code org.bluez} of the tests' own on a private bus. */
@Timeout(value = 120, unit = TimeUnit.SECONDS)
abstract class BleContract {
  private static final String ADDRESS = InventedMeter.ADDRESS;
  private static final String DISTANCE = InventedMeter.DISTANCE;
  private static final String TEXT = InventedMeter.TEXT;

  /** Short only with what is not there; a busy machine answers late. */
  private static final Patience PATIENT =
      new Patience(Duration.ofSeconds(3), Duration.ofSeconds(30), Duration.ofSeconds(30));

  private static final Patience SHORT_WITH_ANSWERS =
      new Patience(Duration.ofSeconds(3), Duration.ofSeconds(30), Duration.ofSeconds(2));

  @TempDir Path folder = Path.of("");
  PeerDevice meter;
  private PrivateBus bus;
  private BluezPeer peer;
  private InventedMeter invented;
  private PeerCharacteristic distance;
  private BleBackend backend;

  abstract BleBackend backend(String busAddress, Patience patience);

  @BeforeEach
  void startBus() throws Exception {
    PrivateBus.obstacle().ifPresent(obstacle -> assumeTrue(false, obstacle));
    bus = PrivateBus.start(folder);
    backend = backend(bus.address(), PATIENT);
    startPeer();
  }

  private void startPeer() throws DBusException {
    peer = BluezPeer.start(bus.address());
    invented = InventedMeter.describingItself(peer);
    meter = invented.device();
    distance = invented.distance();
    peer.device("C0:FF:EE:00:00:02", "Other")
        .service(InventedMeter.SERVICE)
        .characteristic(DISTANCE, "notify");
  }

  @AfterEach
  void stopBus() {
    if (bus != null) {
      peer.close();
      bus.close();
    }
  }

  private static LinkAddress.Ble address() {
    return (LinkAddress.Ble) LinkAddress.parse("ble:" + ADDRESS);
  }

  final BleLink open(Set<String> wanted, RecordingListener listener) {
    return BleLink.open(address(), backend, wanted, LinkClock.system(), listener);
  }

  private static Bytes text(String text) {
    return Bytes.of(text.getBytes(StandardCharsets.UTF_8));
  }

  private void assertDelivers(RecordingListener listener, String hex) throws InterruptedException {
    assertTrue(distance.send(Bytes.ofHex(hex)), "nobody asked for values");
    assertEquals(hex, listener.awaitChunk(DISTANCE).bytes().hex());
  }

  private static LinkLostException loss(RecordingListener listener) throws InterruptedException {
    LinkLostException loss = assertInstanceOf(LinkLostException.class, listener.awaitEnd());
    assertTrue(String.valueOf(loss.getMessage()).startsWith("The meter " + ADDRESS + " was lost"));
    return loss;
  }

  private void assertOpensAnew() throws InterruptedException {
    RecordingListener again = new RecordingListener();
    try (BleLink link = open(Set.of(DISTANCE), again)) {
      assertEquals(address(), link.address());
      assertDelivers(again, "39300000");
    }
  }

  @Test
  void metersWithinReachAreFoundWithCleanNames() {
    List<BleSighting> heard = backend.discover("", Duration.ofMillis(1500));
    assertEquals(
        List.of("C0:FF:EE:00:00:01", "C0:FF:EE:00:00:02"),
        heard.stream().map(BleSighting::address).toList());
    assertEquals("Shed Rule?[2J", heard.get(0).name());
    assertEquals(-58, heard.get(0).strengthDbm().orElseThrow());
  }

  @Test
  void whatAMeterSaysOfItsValuesComesBeforeThem() throws Exception {
    RecordingListener listener = new RecordingListener();
    try (BleLink link = open(Set.of(), listener)) {
      Chunk description = listener.awaitChunk(DISTANCE + BleLink.DESCRIPTION);
      assertEquals(InventedMeter.TENTHS_OF_MILLIMETRES, description.bytes());
      assertEquals("57", listener.awaitChunk(GattNames.BATTERY_LEVEL).bytes().hex());
      assertDelivers(listener, "39300000");
      assertEquals("ble:" + ADDRESS, link.address().text());
      assertFalse(
          invented.text().isSubscribed(), "one that does not describe itself was not asked for");
    }
    assertFalse(listener.heardOfAnEnd(), "a link closed on purpose is not lost");
  }

  @Test
  void everyNotificationArrivesInOrder() throws Exception {
    RecordingListener listener = new RecordingListener();
    int count = 500;
    try (BleLink link = open(Set.of(DISTANCE), listener)) {
      assertEquals(address(), link.address());
      for (int i = 0; i < count; i++) {
        assertTrue(distance.send(Bytes.ofHex("%08x".formatted(i))));
      }
      for (int i = 0; i < count; i++) {
        assertEquals("%08x".formatted(i), listener.awaitChunk(DISTANCE).bytes().hex());
      }
    }
  }

  @Test
  void indicationsArriveToo() throws Exception {
    RecordingListener listener = new RecordingListener();
    try (BleLink link = open(Set.of(TEXT), listener)) {
      assertEquals(address(), link.address());
      invented.says("-0.35 deg\r\n");
      assertEquals(text("-0.35 deg\r\n"), listener.awaitChunk(TEXT).bytes());
      assertFalse(distance.isSubscribed(), "only what the profile names is asked for");
    }
    assertFalse(invented.text().isSubscribed(), "a closed link listens no more");
    assertFalse(meter.isConnected(), "a meter we connected is left disconnected");
  }

  @Test
  void onlyTheMeterThatWasNamedIsConnected() throws Exception {
    RecordingListener listener = new RecordingListener();
    try (BleLink link = open(Set.of(DISTANCE), listener)) {
      assertEquals(address(), link.address());
      assertDelivers(listener, "39300000");
      assertEquals(1, meter.connectionCount());
    }
    LinkUnavailableException absent =
        assertThrows(
            LinkUnavailableException.class,
            () ->
                BleLink.open(
                    (LinkAddress.Ble) LinkAddress.parse("ble:C0:FF:EE:00:00:77"),
                    backend,
                    Set.of(),
                    LinkClock.system(),
                    listener));
    assertEquals(Obstacle.MISSING, absent.obstacle());
    assertTrue(String.valueOf(absent.getMessage()).contains("C0:FF:EE:00:00:02 Other"));
  }

  /** Another program of this machine has connected it and listens: its values are on the bus. */
  private InventedMeter pretenderOnTheBus() {
    InventedMeter pretender = InventedMeter.pretending(peer);
    backend.discover("", Duration.ofMillis(300));
    pretender.device().Connect();
    pretender.distance().StartNotify();
    return pretender;
  }

  @Test
  void aDeviceWithTheUuidsOfTheMeterAtAnotherAddressIsNeverConnectedSubscribedOrHeard()
      throws Exception {
    InventedMeter pretender = pretenderOnTheBus();
    for (Set<String> wanted : List.of(Set.of(DISTANCE), Set.<String>of())) {
      RecordingListener listener = new RecordingListener();
      try (BleLink link = open(wanted, listener)) {
        assertEquals(address(), link.address());
        for (int i = 0; i < 20; i++) {
          pretender.distance().sendToAnybody(Bytes.ofHex("deadbeef"));
        }
        assertDelivers(listener, "39300000");
        pretender.distance().sendToAnybody(Bytes.ofHex("deadbeef"));
        assertDelivers(listener, "3a300000");
        assertFalse(listener.restOfBytes().hex().contains("deadbeef"));
      }
    }
    assertEquals(1, pretender.device().connectionCount(), "only the other program connected it");
    assertEquals(1, pretender.distance().subscriptionCount(), "only the other program listens");
    assertTrue(pretender.device().isConnected(), "it is left as it was found");
    // Out of reach of the meter itself, the pretender does not stand in for it.
    meter.vanish();
    assertThrows(
        LinkUnavailableException.class, () -> open(Set.of(DISTANCE), new RecordingListener()));
    assertEquals(1, pretender.distance().subscriptionCount());
  }

  @Test
  void signalsOfAnotherProgramInTheNameOfTheMeterAreNotHeard() throws Exception {
    RecordingListener listener = new RecordingListener();
    try (BleLink link = open(Set.of(DISTANCE), listener);
        DBusConnection other =
            DBusConnectionBuilder.forAddress(bus.address()).withShared(false).build()) {
      assertEquals(address(), link.address());
      for (int i = 0; i < 20; i++) {
        other.sendMessage(
            new PropertiesChanged(
                distance.path(),
                "org.bluez.GattCharacteristic1",
                Map.of("Value", new Variant<>(Bytes.ofHex("deadbeef").toArray())),
                List.of()));
      }
      other.getRemoteObject("org.freedesktop.DBus", "/", Peer.class).Ping(); // they are on the bus
      assertDelivers(listener, "39300000");
      assertFalse(listener.restOfBytes().hex().contains("deadbeef"));
      assertFalse(listener.heardOfAnEnd());
    }
  }

  @Test
  void characteristicsOfOneUuidInOneMeterAreKeptApartAndFew() throws Exception {
    List<PeerCharacteristic> alike = new ArrayList<>(List.of(distance));
    PeerService second = meter.service(InventedMeter.SERVICE);
    for (int i = 0; i < 20; i++) {
      alike.add(second.described(DISTANCE, InventedMeter.TENTHS_OF_MILLIMETRES, "notify"));
    }
    RecordingListener listener = new RecordingListener();
    try (BleLink link = open(Set.of(DISTANCE), listener)) {
      assertEquals(address(), link.address());
      List<PeerCharacteristic> heard =
          alike.stream().filter(PeerCharacteristic::isSubscribed).toList();
      assertEquals(8, heard.size(), "no more are listened to");
      Set<String> channels = new HashSet<>();
      for (PeerCharacteristic one : heard) {
        assertTrue(one.send(Bytes.ofHex("39300000")));
        Chunk chunk = listener.awaitChunk();
        while (!chunk.bytes().hex().equals("39300000")) {
          chunk = listener.awaitChunk();
        }
        channels.add(chunk.channel());
      }
      assertEquals(8, channels.size(), channels.toString());
      assertTrue(channels.contains(DISTANCE) && channels.contains(DISTANCE + "#8"));
    }
  }

  @Test
  void aCommandReachesTheMeter() throws Exception {
    try (BleLink link = open(Set.of(DISTANCE), new RecordingListener())) {
      link.send(Bytes.ofHex("440d"));
      assertEquals(Bytes.ofHex("440d"), invented.command().written().poll(60, TimeUnit.SECONDS));
    }
  }

  @Test
  void aDroppedConnectionIsALossAndTheMeterIsReachedAgain() throws Exception {
    RecordingListener listener = new RecordingListener();
    BleLink link = open(Set.of(DISTANCE), listener);
    assertDelivers(listener, "39300000");
    meter.drop();
    assertEquals(4, loss(listener).receivedByteCount());
    assertThrows(LinkLostException.class, () -> link.send(Bytes.ofHex("44")));
    assertOpensAnew();
  }

  @Test
  void aMeterThatVanishedIsFoundAgainWhenItReappears() throws Exception {
    RecordingListener listener = new RecordingListener();
    assertEquals(address(), open(Set.of(DISTANCE), listener).address());
    meter.vanish();
    assertEquals(0, loss(listener).receivedByteCount());
    LinkUnavailableException away =
        assertThrows(LinkUnavailableException.class, () -> open(Set.of(), listener));
    assertEquals(Obstacle.MISSING, away.obstacle());
    meter.comeOnAir();
    assertOpensAnew();
  }

  @Test
  void anAdapterSwitchedOffIsALossAndIsNamedUntilItIsOnAgain() throws Exception {
    RecordingListener listener = new RecordingListener();
    assertEquals(address(), open(Set.of(DISTANCE), listener).address());
    peer.adapter().powerOff();
    assertEquals(0, loss(listener).receivedByteCount());
    LinkUnavailableException off =
        assertThrows(LinkUnavailableException.class, () -> open(Set.of(), listener));
    assertTrue(String.valueOf(off.getMessage()).contains("hci0 is switched off"), off.getMessage());
    peer.adapter().powerOn();
    assertOpensAnew();
  }

  @Test
  void servicesThatGoAwayAreALossAlthoughTheConnectionStays() throws Exception {
    RecordingListener listener = new RecordingListener();
    assertEquals(address(), open(Set.of(DISTANCE), listener).address());
    assertTrue(meter.isConnected());
    meter.removeServices();
    assertEquals(0, loss(listener).receivedByteCount());
    meter.drop();
    assertOpensAnew();
  }

  @Test
  void theBluetoothServiceDyingIsALoss() throws Exception {
    RecordingListener listener = new RecordingListener();
    assertEquals(address(), open(Set.of(DISTANCE), listener).address());
    peer.close();
    assertEquals(0, loss(listener).receivedByteCount());
    startPeer();
    assertOpensAnew();
  }

  @Test
  void theBusDyingIsALossAndTheNextOpeningSaysSo() throws Exception {
    RecordingListener listener = new RecordingListener();
    assertEquals(address(), open(Set.of(DISTANCE), listener).address());
    bus.close();
    assertEquals(0, loss(listener).receivedByteCount());
    LinkUnavailableException nothing =
        assertThrows(LinkUnavailableException.class, () -> open(Set.of(), listener));
    assertEquals(Obstacle.MISSING, nothing.obstacle());
  }

  @Test
  void aMeterThatDoesNotAnswerAnyMoreIsALoss() throws Exception {
    SteppedClock clock = new SteppedClock();
    RecordingListener listener = new RecordingListener();
    BleBackend impatient = backend(bus.address(), SHORT_WITH_ANSWERS);
    BleLink link = BleLink.open(address(), impatient, Set.of(DISTANCE), clock, listener);
    assertEquals("57", listener.awaitChunk(GattNames.BATTERY_LEVEL).bytes().hex());
    invented.battery().mute(true);
    clock.advance(Duration.ofSeconds(11));
    assertTrue(String.valueOf(loss(listener).getMessage()).contains("does not answer"));
    invented.battery().mute(false);
    link.close();
    assertOpensAnew();
  }

  @Test
  void aMeterThatAnswersMayBeSilentForHours() throws Exception {
    SteppedClock clock = new SteppedClock();
    RecordingListener listener = new RecordingListener();
    try (BleLink link = BleLink.open(address(), backend, Set.of(DISTANCE), clock, listener)) {
      assertEquals("57", listener.awaitChunk(GattNames.BATTERY_LEVEL).bytes().hex());
      invented.battery().value(Bytes.ofHex("31"));
      clock.advance(Duration.ofHours(3));
      assertEquals("31", listener.awaitChunk(GattNames.BATTERY_LEVEL).bytes().hex());
      assertFalse(listener.heardOfAnEnd());
      assertTrue(meter.isConnected());
      assertEquals(address(), link.address());
    }
  }

  @Test
  void aMeterThatReportsNothingOfUseIsRefusedWithWhatItHas() {
    LinkUnavailableException refused =
        assertThrows(
            LinkUnavailableException.class,
            () -> open(Set.of(InventedMeter.COMMAND), new RecordingListener()));
    assertTrue(String.valueOf(refused.getMessage()).contains(DISTANCE), refused.getMessage());
    assertFalse(meter.isConnected(), "a meter of no use is left disconnected");
  }
}
