package datumpeg.bridge.link.ble.bluez;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.ble.BleEvents;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.interfaces.DBus.NameOwnerChanged;
import org.freedesktop.dbus.interfaces.ObjectManager.InterfacesRemoved;
import org.freedesktop.dbus.interfaces.Properties.PropertiesChanged;
import org.freedesktop.dbus.types.Variant;
import org.jspecify.annotations.Nullable;

/**
 * What BlueZ tells of one device. Values count only of characteristics subscribed to: the daemon
 * may have subscribed by itself after a reconnect, and a read looks like a notification.
 * Thread-safe.
 */
final class BluezSignals {
  private final String adapterPath;
  private final String devicePath;
  private final BleEvents events;
  private final Set<String> subscribed = ConcurrentHashMap.newKeySet();

  BluezSignals(String adapterPath, String devicePath, BleEvents events) {
    this.adapterPath = adapterPath;
    this.devicePath = devicePath;
    this.events = events;
  }

  void hear(BluezBus bus) throws DBusException {
    bus.hear(PropertiesChanged.class, this::changed);
    bus.hear(InterfacesRemoved.class, this::removed);
    bus.hearBus(NameOwnerChanged.class, this::ownerChanged);
  }

  /** From now on values of this characteristic count. */
  void subscribed(String path) {
    subscribed.add(path);
  }

  private void changed(PropertiesChanged signal) {
    Map<String, Variant<?>> properties = signal.getPropertiesChanged();
    String path = signal.getPath();
    switch (signal.getInterfaceName()) {
      case BluezObjects.CHARACTERISTIC -> value(path, properties);
      case BluezObjects.DEVICE -> {
        if (path.equals(devicePath)) {
          device(properties);
        }
      }
      case BluezObjects.BATTERY -> {
        if (path.equals(devicePath)
            && BluezObjects.value(properties, "Percentage") instanceof Number percent) {
          events.battery(percent.intValue() & 0xFF);
        }
      }
      case BluezObjects.ADAPTER -> {
        if (path.equals(adapterPath) && BluezObjects.isFalse(properties, "Powered")) {
          events.gone("the Bluetooth adapter was switched off");
        }
      }
      default -> {}
    }
  }

  private void value(String path, Map<String, Variant<?>> properties) {
    if (subscribed.contains(path)) {
      Object value = BluezObjects.value(properties, "Value");
      if (value != null) {
        events.notified(path, bytes(value));
      }
    }
  }

  private void device(Map<String, Variant<?>> properties) {
    if (BluezObjects.isFalse(properties, "Connected")) {
      events.gone("switched off, out of reach, or disconnected");
    } else if (!subscribed.isEmpty() && BluezObjects.isFalse(properties, "ServicesResolved")) {
      // Comes before the other at a disconnect, and alone when the meter changes its services.
      events.gone("switched off, out of reach, or changing its services");
    }
  }

  private void removed(InterfacesRemoved signal) {
    String path = signal.getSignalSource().getPath();
    List<String> gone = signal.getInterfaces();
    // The battery's interface alone goes at every disconnect: that is not the device.
    if (path.equals(devicePath) && gone.contains(BluezObjects.DEVICE)) {
      events.gone("it vanished");
    } else if (path.equals(adapterPath) && gone.contains(BluezObjects.ADAPTER)) {
      events.gone("the Bluetooth adapter was unplugged");
    } else if (subscribed.contains(path) && gone.contains(BluezObjects.CHARACTERISTIC)) {
      events.gone("its service went away");
    }
  }

  private void ownerChanged(NameOwnerChanged signal) {
    if (signal.name.equals(BluezBus.SERVICE)) {
      events.gone("the Bluetooth service of this machine ended");
    }
  }

  /** A value as the library hands it out: a list of bytes in a signal, an array in an answer. */
  static Bytes bytes(@Nullable Object value) {
    if (value instanceof byte[] array) {
      return Bytes.of(array);
    }
    if (value instanceof List<?> list) {
      byte[] array = new byte[list.size()];
      for (int i = 0; i < array.length; i++) {
        array[i] = list.get(i) instanceof Number number ? number.byteValue() : 0;
      }
      return Bytes.of(array);
    }
    return Bytes.empty();
  }
}
