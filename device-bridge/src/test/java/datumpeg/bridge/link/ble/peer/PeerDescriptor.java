package datumpeg.bridge.link.ble.peer;

import datumpeg.bridge.frame.Bytes;
import java.util.List;
import java.util.Map;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;

/** A descriptor of an invented meter's characteristic. Thread-safe. */
public final class PeerDescriptor extends PeerObject implements BluezInterfaces.Descriptor {
  static final String NAME = "org.bluez.GattDescriptor1";

  /** The Characteristic Presentation Format. */
  static final String PRESENTATION = "00002904-0000-1000-8000-00805f9b34fb";

  private final Bytes value;

  PeerDescriptor(BluezPeer peer, String path, String uuid, Bytes value) {
    super(peer, path);
    this.value = value;
    begin(NAME, "UUID", new Variant<>(uuid));
    begin(
        NAME,
        "Characteristic",
        new Variant<>(new DBusPath(path.substring(0, path.lastIndexOf('/')))));
    begin(NAME, "Value", new Variant<>(new byte[0]));
    begin(NAME, "Flags", words(List.of("read")));
  }

  @Override
  public byte[] ReadValue(Map<String, Variant<?>> options) {
    change(NAME, "Value", new Variant<>(value.toArray()));
    return value.toArray();
  }

  @Override
  public void WriteValue(byte[] written, Map<String, Variant<?>> options) {
    throw new org.bluez.Error.NotPermitted("Write not permitted");
  }
}
