package datumpeg.bridge.link.ble.bluez;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.ble.BleCharacteristic;
import datumpeg.bridge.link.ble.BleConnection;
import datumpeg.bridge.link.ble.BleRefusal;
import datumpeg.bridge.link.ble.Patience;
import datumpeg.bridge.link.ble.bluez.BluezBus.AnswerMissingException;
import datumpeg.bridge.link.ble.bluez.BluezBus.RefusedException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.bluez.Device1;
import org.bluez.GattCharacteristic1;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.exceptions.DBusExecutionException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A connected device of BlueZ. Left as it was found: a device that another program had connected
 * stays connected. Thread-safe.
 */
final class BluezConnection implements BleConnection {
  private static final Logger LOG = LoggerFactory.getLogger(BluezConnection.class);

  private final BluezBus bus;
  private final String devicePath;
  private final boolean connectedByUs;
  private final List<BleCharacteristic> characteristics;
  private final BluezSignals signals;
  private final Patience patience;
  private final AtomicBoolean closed = new AtomicBoolean();

  BluezConnection(
      BluezBus bus,
      String devicePath,
      boolean connectedByUs,
      List<BleCharacteristic> characteristics,
      BluezSignals signals,
      Patience patience) {
    this.bus = bus;
    this.devicePath = devicePath;
    this.connectedByUs = connectedByUs;
    this.characteristics = List.copyOf(characteristics);
    this.signals = signals;
    this.patience = patience;
  }

  @Override
  public List<BleCharacteristic> characteristics() {
    return characteristics;
  }

  @Override
  public void subscribe(BleCharacteristic characteristic) {
    signals.subscribed(characteristic.handle());
    try {
      bus.call(remote(characteristic), "StartNotify", patience.answer());
    } catch (RefusedException refused) {
      throw BluezRefusal.of(address(), refused);
    } catch (DBusException | DBusExecutionException failed) {
      throw BleRefusal.notConnected(address(), "the bus failed", failed);
    } catch (AnswerMissingException silent) {
      throw BleRefusal.notConnected(address(), "it did not answer in time", silent);
    }
  }

  private String address() {
    return devicePath.substring(devicePath.lastIndexOf("dev_") + 4).replace('_', ':');
  }

  private GattCharacteristic1 remote(BleCharacteristic characteristic) throws DBusException {
    return bus.remote(characteristic.handle(), GattCharacteristic1.class);
  }

  @Override
  public Answer read(BleCharacteristic characteristic) {
    try {
      Object value = bus.call(remote(characteristic), "ReadValue", patience.answer(), Map.of());
      return Answer.of(BluezSignals.bytes(value));
    } catch (RefusedException | DBusException | DBusExecutionException refused) {
      return Answer.refused();
    } catch (AnswerMissingException silent) {
      return Answer.none();
    }
  }

  @Override
  public boolean write(BleCharacteristic characteristic, Bytes value) {
    try {
      bus.call(remote(characteristic), "WriteValue", patience.answer(), value.toArray(), Map.of());
      return true;
    } catch (DBusException
        | DBusExecutionException
        | AnswerMissingException
        | RefusedException refused) {
      LOG.info("a value was not written", refused);
      return false;
    }
  }

  @Override
  public Optional<String> trouble() {
    return bus.isConnected()
        ? Optional.empty()
        : Optional.of("the D-Bus system bus of this machine ended");
  }

  @Override
  public void close() {
    if (closed.getAndSet(true)) {
      return;
    }
    if (bus.isConnected() && connectedByUs) {
      disconnect();
    }
    // Ends the subscriptions of this connection with it.
    bus.close();
  }

  private void disconnect() {
    try {
      bus.call(bus.remote(devicePath, Device1.class), "Disconnect", patience.answer());
    } catch (DBusException
        | DBusExecutionException
        | AnswerMissingException
        | RefusedException alreadyGone) {
      LOG.debug("the device was gone before it was left", alreadyGone);
    }
  }
}
