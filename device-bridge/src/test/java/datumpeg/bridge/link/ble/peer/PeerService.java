package datumpeg.bridge.link.ble.peer;

import datumpeg.bridge.frame.Bytes;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;

/** A service of an invented meter. Thread-safe. */
public final class PeerService extends PeerObject implements BluezInterfaces.Service {
  static final String NAME = "org.bluez.GattService1";

  private final List<PeerCharacteristic> characteristics = new CopyOnWriteArrayList<>();
  private volatile boolean exported;

  PeerService(BluezPeer peer, String path, String uuid) {
    super(peer, path);
    begin(NAME, "UUID", new Variant<>(uuid));
    begin(NAME, "Device", new Variant<>(new DBusPath(path.substring(0, path.lastIndexOf('/')))));
    begin(NAME, "Primary", new Variant<>(true));
    begin(NAME, "Includes", new Variant<>(List.<DBusPath>of(), "ao"));
  }

  /**
   * A characteristic.
   *
   * @param flags as BlueZ names them: read, write, notify, indicate …
   */
  public PeerCharacteristic characteristic(String uuid, String... flags) {
    PeerCharacteristic characteristic =
        new PeerCharacteristic(
            peer,
            getObjectPath() + "/char%04x".formatted(characteristics.size() + 1),
            uuid,
            List.of(flags));
    characteristics.add(characteristic);
    return characteristic;
  }

  /** A characteristic that says how its values are to be read. */
  public PeerCharacteristic described(String uuid, Bytes presentation, String... flags) {
    PeerCharacteristic characteristic = characteristic(uuid, flags);
    characteristic.descriptor(PeerDescriptor.PRESENTATION, presentation);
    return characteristic;
  }

  void stopNotifying() {
    characteristics.forEach(PeerCharacteristic::forgetSubscriber);
  }

  private List<PeerObject> all() {
    List<PeerObject> all = new ArrayList<>(List.of(this));
    for (PeerCharacteristic characteristic : characteristics) {
      all.add(characteristic);
      all.addAll(characteristic.descriptors());
    }
    return all;
  }

  void export() {
    exported = true;
    all().forEach(peer::add);
  }

  void unexport() {
    if (exported) {
      exported = false;
      List<PeerObject> all = all();
      for (int i = all.size() - 1; i >= 0; i--) {
        peer.remove(all.get(i), List.copyOf(all.get(i).interfaces().keySet()));
      }
    }
  }
}
