package datumpeg.bridge.link.ble.peer;

import java.util.Map;
import org.freedesktop.dbus.annotations.DBusInterfaceName;
import org.freedesktop.dbus.interfaces.DBusInterface;
import org.freedesktop.dbus.types.Variant;

/**
 * What a client may call, written down from BlueZ's D-Bus documents and not taken from the client's
 * library, so that a mistake in one is not a mistake in both. Method names are those of the bus.
 */
public final class BluezInterfaces {
  private BluezInterfaces() {}

  /** org.bluez.Adapter(5). */
  @DBusInterfaceName("org.bluez.Adapter1")
  public interface Adapter extends DBusInterface {
    void StartDiscovery();

    void StopDiscovery();

    void SetDiscoveryFilter(Map<String, Variant<?>> filter);
  }

  /** org.bluez.Device(5). */
  @DBusInterfaceName("org.bluez.Device1")
  public interface Device extends DBusInterface {
    void Connect();

    void Disconnect();
  }

  /** org.bluez.Battery(5): properties only. */
  @DBusInterfaceName("org.bluez.Battery1")
  public interface Battery extends DBusInterface {}

  /** org.bluez.GattService(5): properties only. */
  @DBusInterfaceName("org.bluez.GattService1")
  public interface Service extends DBusInterface {}

  /** org.bluez.GattCharacteristic(5). */
  @DBusInterfaceName("org.bluez.GattCharacteristic1")
  public interface Characteristic extends DBusInterface {
    byte[] ReadValue(Map<String, Variant<?>> options);

    void WriteValue(byte[] value, Map<String, Variant<?>> options);

    void StartNotify();

    void StopNotify();
  }

  /** org.bluez.GattDescriptor(5). */
  @DBusInterfaceName("org.bluez.GattDescriptor1")
  public interface Descriptor extends DBusInterface {
    byte[] ReadValue(Map<String, Variant<?>> options);

    void WriteValue(byte[] value, Map<String, Variant<?>> options);
  }
}
