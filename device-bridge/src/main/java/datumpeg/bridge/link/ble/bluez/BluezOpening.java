package datumpeg.bridge.link.ble.bluez;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.ble.BleCharacteristic;
import datumpeg.bridge.link.ble.BleCharacteristic.Use;
import datumpeg.bridge.link.ble.BleConnection;
import datumpeg.bridge.link.ble.BleEvents;
import datumpeg.bridge.link.ble.Patience;
import datumpeg.bridge.link.ble.bluez.BluezBus.AnswerMissingException;
import datumpeg.bridge.link.ble.bluez.BluezBus.RefusedException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.bluez.Device1;
import org.bluez.GattDescriptor1;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.exceptions.DBusExecutionException;

/** The steps from a known device to a connection whose services are known. One use. */
final class BluezOpening {
  /** A meter has a dozen; a hostile device may list thousands. */
  private static final int MOST_CHARACTERISTICS = 128;

  private static final long LOOK_MILLIS = 20;

  private final BluezBus bus;
  private final BluezObjects.Device device;
  private final BluezSignals signals;
  private final BleEvents events;
  private final Patience patience;

  BluezOpening(
      BluezBus bus,
      BluezObjects.Adapter adapter,
      BluezObjects.Device device,
      BleEvents events,
      Patience patience) {
    this.bus = bus;
    this.device = device;
    this.events = events;
    this.patience = patience;
    this.signals = new BluezSignals(adapter.path(), device.path(), events);
  }

  BleConnection open() throws DBusException, AnswerMissingException, RefusedException {
    // Before connecting, so that nothing that happens meanwhile is missed.
    signals.hear(bus);
    if (!device.isConnected()) {
      bus.call(bus.remote(device.path(), Device1.class), "Connect", patience.connecting());
    }
    awaitServices();
    BluezObjects objects = bus.objects();
    List<BleCharacteristic> characteristics = new ArrayList<>();
    for (BluezObjects.Listed listed : objects.characteristics(device.path())) {
      if (characteristics.size() < MOST_CHARACTERISTICS) {
        characteristics.add(characteristic(listed));
      }
    }
    events.battery(objects.batteryPercent(device.path()));
    return new BluezConnection(
        bus, device.path(), !device.isConnected(), characteristics, signals, patience);
  }

  private void awaitServices() throws DBusException, AnswerMissingException {
    long start = System.nanoTime();
    while (!BluezObjects.isTrue(
        bus.properties(device.path(), BluezObjects.DEVICE), "ServicesResolved")) {
      if (System.nanoTime() - start > patience.connecting().toNanos()) {
        throw new AnswerMissingException("the search for services");
      }
      BluezBus.pause(LOOK_MILLIS);
    }
  }

  private BleCharacteristic characteristic(BluezObjects.Listed listed) {
    boolean reports = listed.uses().contains(Use.NOTIFY) || listed.uses().contains(Use.INDICATE);
    String descriptor = reports ? listed.descriptorPath() : null;
    return new BleCharacteristic(
        listed.path(),
        listed.service(),
        listed.uuid(),
        listed.uses(),
        descriptor == null ? Bytes.empty() : presentation(descriptor));
  }

  /** A descriptor that cannot be read is as good as none: a profile may still know the meter. */
  private Bytes presentation(String path) {
    try {
      Object value =
          bus.call(
              bus.remote(path, GattDescriptor1.class), "ReadValue", patience.answer(), Map.of());
      return BluezSignals.bytes(value);
    } catch (DBusException
        | DBusExecutionException
        | AnswerMissingException
        | RefusedException unreadable) {
      return Bytes.empty();
    }
  }
}
