package datumpeg.bridge.link.ble.peer;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.UInt32;
import org.freedesktop.dbus.types.Variant;

/** An invented meter. Thread-safe. */
public final class PeerDevice extends PeerObject
    implements BluezInterfaces.Device, BluezInterfaces.Battery {
  static final String NAME = "org.bluez.Device1";
  private static final String BATTERY = "org.bluez.Battery1";

  private final String address;
  private final PeerAdapter adapter;
  private final List<PeerService> services = new CopyOnWriteArrayList<>();
  private final AtomicInteger connections = new AtomicInteger();
  private volatile boolean onAir = true;
  private volatile boolean known;
  private volatile int batteryPercent = -1;

  PeerDevice(BluezPeer peer, PeerAdapter adapter, String address, String name) {
    super(peer, adapter.getObjectPath() + "/dev_" + address.replace(':', '_'));
    this.address = address;
    this.adapter = adapter;
    begin(NAME, "Address", new Variant<>(address));
    begin(NAME, "AddressType", new Variant<>("random"));
    begin(NAME, "Name", new Variant<>(name));
    begin(NAME, "Alias", new Variant<>(name));
    begin(NAME, "Adapter", new Variant<>(new DBusPath(adapter.getObjectPath())));
    begin(NAME, "Class", new Variant<>(new UInt32(0)));
    begin(NAME, "RSSI", new Variant<>((short) -58));
    for (String no :
        List.of("Paired", "Trusted", "Blocked", "LegacyPairing", "Connected", "ServicesResolved")) {
      begin(NAME, no, new Variant<>(false));
    }
    begin(NAME, "UUIDs", words(List.of()));
  }

  public String address() {
    return address;
  }

  /** A service of the meter; what it holds is seen once a client connects. */
  public PeerService service(String uuid) {
    PeerService service =
        new PeerService(
            peer, getObjectPath() + "/service%04x".formatted(services.size() + 1), uuid);
    services.add(service);
    return service;
  }

  /** The system's own view of the battery, there while connected. */
  public void battery(int percent) {
    batteryPercent = percent;
    if (isConnected()) {
      change(BATTERY, "Percentage", new Variant<>((byte) percent));
    }
  }

  public boolean isConnected() {
    return isTrue(NAME, "Connected");
  }

  /** How often a client connected. */
  public int connectionCount() {
    return connections.get();
  }

  /** It was heard: the daemon knows it from now on. */
  synchronized void advertise() {
    if (onAir && !known && adapter.isDiscovering()) {
      known = true;
      peer.add(this);
    }
  }

  /** Out of range or switched off: the connection is lost, and it cannot be found. */
  public void goOffAir() {
    onAir = false;
    drop();
  }

  /** Switched on again. */
  public void comeOnAir() {
    onAir = true;
    advertise();
  }

  /** Out of range for so long that the daemon forgot it. */
  public void vanish() {
    goOffAir();
    if (known) {
      known = false;
      peer.remove(this, List.of(NAME));
    }
  }

  /** The connection is lost; the meter itself is still there. */
  public synchronized void drop() {
    if (!isConnected()) {
      return;
    }
    services.forEach(PeerService::stopNotifying);
    change(NAME, "ServicesResolved", new Variant<>(false));
    removeServices();
    if (batteryPercent >= 0) {
      forget(BATTERY);
      peer.removedInterface(this, BATTERY);
    }
    change(NAME, "Connected", new Variant<>(false));
  }

  /** The daemon takes the services away although the connection stays. */
  public void removeServices() {
    List<PeerService> last = new ArrayList<>(services);
    for (int i = last.size() - 1; i >= 0; i--) {
      last.get(i).unexport();
    }
  }

  @Override
  public synchronized void Connect() {
    adapter.requirePower();
    if (!onAir) {
      throw new org.bluez.Error.Failed("le-connection-abort-by-local");
    }
    if (isConnected()) {
      return;
    }
    connections.incrementAndGet();
    change(NAME, "Connected", new Variant<>(true));
    if (batteryPercent >= 0) {
      begin(BATTERY, "Percentage", new Variant<>((byte) batteryPercent));
      peer.addedInterface(this, BATTERY);
    }
    services.forEach(PeerService::export);
    change(NAME, "ServicesResolved", new Variant<>(true));
  }

  @Override
  public void Disconnect() {
    drop();
  }
}
