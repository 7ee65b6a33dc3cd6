package datumpeg.bridge.link.ble.bluez;

import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.ble.BleBackend;
import datumpeg.bridge.link.ble.BleConnection;
import datumpeg.bridge.link.ble.BleEvents;
import datumpeg.bridge.link.ble.BleRefusal;
import datumpeg.bridge.link.ble.BleSighting;
import datumpeg.bridge.link.ble.Patience;
import datumpeg.bridge.link.ble.bluez.BluezBus.AnswerMissingException;
import datumpeg.bridge.link.ble.bluez.BluezBus.RefusedException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.bluez.Adapter1;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.exceptions.DBusExecutionException;
import org.freedesktop.dbus.types.Variant;

/** Reaches meters through BlueZ. Each discovery and each meter has its own bus connection. */
public final class BluezBackend implements BleBackend {
  /** Where Linux has its system bus: D-Bus Specification, "Well-known Message Bus Instances". */
  public static final String SYSTEM_BUS = "unix:path=/var/run/dbus/system_bus_socket";

  private static final long LOOK_MILLIS = 100;

  private final String busAddress;
  private final Patience patience;

  /**
   * A backend on a bus.
   *
   * @param busAddress of the bus, in D-Bus's own notation
   */
  public BluezBackend(String busAddress, Patience patience) {
    this.busAddress = busAddress;
    this.patience = patience;
  }

  @Override
  public List<BleSighting> discover(String adapterName, Duration howLong) {
    try (BluezBus bus = BluezBus.open(busAddress, () -> {})) {
      BluezObjects.Adapter adapter = adapter(bus.objects(), adapterName);
      startDiscovery(bus, adapter);
      BluezBus.pause(howLong.toMillis());
      List<BleSighting> heard =
          bus.objects().devices(adapter).stream().map(BluezObjects.Device::sighting).toList();
      stopDiscovery(bus, adapter);
      return heard;
    } catch (DBusException | DBusExecutionException | RefusedException refused) {
      throw BleRefusal.noService("it refused to listen for meters", refused);
    } catch (AnswerMissingException silent) {
      throw BleRefusal.noService("it does not answer", silent);
    }
  }

  @Override
  public BleConnection connect(LinkAddress.Ble address, BleEvents events) {
    BluezBus bus =
        BluezBus.open(busAddress, () -> events.gone("the D-Bus system bus of this machine ended"));
    try {
      BluezObjects.Adapter adapter = adapter(bus.objects(), address.adapter());
      BluezObjects.Device device = known(bus, adapter, address.device());
      return new BluezOpening(bus, adapter, device, events, patience).open();
    } catch (RefusedException refused) {
      bus.close();
      throw BluezRefusal.of(address.device(), refused);
    } catch (DBusException | DBusExecutionException failed) {
      bus.close();
      throw BleRefusal.noService("the bus failed", failed);
    } catch (AnswerMissingException silent) {
      bus.close();
      throw BleRefusal.notConnected(address.device(), "it did not answer in time", silent);
    } catch (LinkUnavailableException unavailable) {
      bus.close();
      throw unavailable;
    }
  }

  private static BluezObjects.Adapter adapter(BluezObjects objects, String name) {
    List<BluezObjects.Adapter> adapters = objects.adapters();
    BluezObjects.Adapter adapter =
        adapters.stream()
            .filter(one -> name.isEmpty() || one.name().equals(name))
            .findFirst()
            .orElseThrow(
                () ->
                    BleRefusal.noAdapter(
                        name, adapters.stream().map(BluezObjects.Adapter::name).toList()));
    if (!adapter.isPowered()) {
      throw BleRefusal.switchedOff(adapter.name());
    }
    return adapter;
  }

  /** The device as BlueZ knows it, which may take a discovery; a connected one is never sought. */
  private BluezObjects.Device known(BluezBus bus, BluezObjects.Adapter adapter, String address)
      throws DBusException, AnswerMissingException, RefusedException {
    var known = bus.objects().device(adapter, address);
    if (known.isPresent()) {
      return known.get();
    }
    startDiscovery(bus, adapter);
    long start = System.nanoTime();
    while (known.isEmpty() && System.nanoTime() - start < patience.discovery().toNanos()) {
      BluezBus.pause(LOOK_MILLIS);
      known = bus.objects().device(adapter, address);
    }
    List<BluezObjects.Device> heard = bus.objects().devices(adapter);
    stopDiscovery(bus, adapter);
    return known.orElseThrow(
        () ->
            BleRefusal.notHeard(
                address,
                patience.discovery().toSeconds(),
                heard.stream().map(BluezObjects.Device::sighting).toList()));
  }

  private void startDiscovery(BluezBus bus, BluezObjects.Adapter adapter)
      throws DBusException, AnswerMissingException, RefusedException {
    Adapter1 radio = bus.remote(adapter.path(), Adapter1.class);
    bus.call(
        radio,
        "SetDiscoveryFilter",
        patience.answer(),
        Map.<String, Variant<?>>of("Transport", new Variant<>("le")));
    bus.call(radio, "StartDiscovery", patience.answer());
  }

  private void stopDiscovery(BluezBus bus, BluezObjects.Adapter adapter)
      throws DBusException, AnswerMissingException, RefusedException {
    bus.call(bus.remote(adapter.path(), Adapter1.class), "StopDiscovery", patience.answer());
  }
}
