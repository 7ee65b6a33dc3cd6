package datumpeg.bridge.link.ble.peer;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.connections.impl.DBusConnectionBuilder;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.interfaces.ObjectManager;
import org.freedesktop.dbus.interfaces.Properties.PropertiesChanged;
import org.freedesktop.dbus.messages.DBusSignal;
import org.freedesktop.dbus.types.Variant;

/**
 * Plays the Bluetooth daemon: one adapter {@code hci0}, and the meters a test invents. Thread-safe.
 */
public final class BluezPeer implements ObjectManager, AutoCloseable {
  private static final String SERVICE = "org.bluez";

  private final DBusConnection connection;
  private final Map<String, PeerObject> objects = new ConcurrentHashMap<>();
  private final List<PeerDevice> devices = new CopyOnWriteArrayList<>();
  private final PeerAdapter adapter;

  private BluezPeer(DBusConnection connection) {
    this.connection = connection;
    this.adapter = new PeerAdapter(this, "/org/bluez/hci0");
  }

  /** Takes the daemon's name on a bus. */
  public static BluezPeer start(String busAddress) throws DBusException {
    DBusConnection connection =
        DBusConnectionBuilder.forAddress(busAddress)
            .withShared(false)
            // A read that is made to hang must not keep other calls from being answered.
            .receivingThreadConfig()
            .withMethodCallThreadCount(4)
            .connectionConfig()
            .build();
    BluezPeer peer = new BluezPeer(connection);
    connection.exportObject("/", peer);
    peer.add(peer.adapter);
    connection.requestBusName(SERVICE);
    return peer;
  }

  public PeerAdapter adapter() {
    return adapter;
  }

  /** A meter within reach; a client hears of it when it looks for meters, now or later. */
  public PeerDevice device(String address, String name) {
    PeerDevice device = new PeerDevice(this, adapter, address, name);
    devices.add(device);
    device.advertise();
    return device;
  }

  List<PeerDevice> devices() {
    return devices;
  }

  @Override
  public String getObjectPath() {
    return "/";
  }

  @Override
  public Map<DBusPath, Map<String, Map<String, Variant<?>>>> GetManagedObjects() {
    Map<DBusPath, Map<String, Map<String, Variant<?>>>> managed = new LinkedHashMap<>();
    new TreeMap<>(objects)
        .forEach((path, object) -> managed.put(new DBusPath(path), object.interfaces()));
    return managed;
  }

  void add(PeerObject object) {
    objects.put(object.getObjectPath(), object);
    sending(
        () -> {
          connection.exportObject(object.getObjectPath(), object);
          return new InterfacesAdded(
              "/", new DBusPath(object.getObjectPath()), object.interfaces());
        });
  }

  void addedInterface(PeerObject object, String name) {
    Map<String, Map<String, Variant<?>>> one = object.interfaces();
    one.keySet().retainAll(List.of(name));
    sending(() -> new InterfacesAdded("/", new DBusPath(object.getObjectPath()), one));
  }

  void remove(PeerObject object, List<String> interfaces) {
    objects.remove(object.getObjectPath());
    connection.unExportObject(object.getObjectPath());
    sending(() -> new InterfacesRemoved("/", new DBusPath(object.getObjectPath()), interfaces));
  }

  void removedInterface(PeerObject object, String name) {
    sending(() -> new InterfacesRemoved("/", new DBusPath(object.getObjectPath()), List.of(name)));
  }

  void changed(String path, String interfaceName, String property, Variant<?> value) {
    if (objects.containsKey(path)) {
      sending(() -> new PropertiesChanged(path, interfaceName, Map.of(property, value), List.of()));
    }
  }

  private interface Signal {
    DBusSignal make() throws DBusException;
  }

  private synchronized void sending(Signal signal) {
    try {
      connection.sendMessage(signal.make());
    } catch (DBusException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The daemon dies; the bus lives on. */
  @Override
  public void close() {
    connection.disconnect();
  }
}
