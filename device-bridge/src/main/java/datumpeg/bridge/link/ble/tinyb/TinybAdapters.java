package datumpeg.bridge.link.ble.tinyb;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tinyb.BluetoothAdapter;
import tinyb.BluetoothDevice;
import tinyb.BluetoothException;
import tinyb.BluetoothManager;

/**
 * The child's way to a meter. Lists are polled: the library's own waiting for an object aborted the
 * process now and then. One thread.
 */
final class TinybAdapters {
  private static final long LOOK_MILLIS = 100;

  private final BluetoothManager manager;
  private final ChildOutput output;

  TinybAdapters(BluetoothManager manager, ChildOutput output) {
    this.manager = manager;
    this.output = output;
  }

  int discover(String name, long millis) {
    BluetoothAdapter adapter = adapter(name);
    if (adapter == null) {
      return 1;
    }
    adapter.startDiscovery();
    TinybDevice.pause(millis);
    adapter.getDevices().stream()
        .sorted(Comparator.comparing(BluetoothDevice::getAddress))
        .forEach(this::sighted);
    output.say("done");
    adapter.stopDiscovery();
    return 0;
  }

  private void sighted(BluetoothDevice device) {
    output.say(
        "sighting",
        device.getAddress().toUpperCase(Locale.ROOT),
        String.valueOf(device.getRSSI()),
        ChildLine.hex(device.getAlias()));
  }

  /** The radio of this name, powered; null after it was said that there is none. */
  private @Nullable BluetoothAdapter adapter(String name) {
    List<BluetoothAdapter> adapters = manager.getAdapters();
    for (BluetoothAdapter adapter : adapters) {
      if (name.isEmpty() || adapter.getInterfaceName().equals(name)) {
        if (adapter.getPowered()) {
          return adapter;
        }
        output.refused("SWITCHED_OFF", adapter.getInterfaceName());
        return null;
      }
    }
    output.refused(
        "NO_ADAPTER",
        String.join(",", adapters.stream().map(BluetoothAdapter::getInterfaceName).toList()));
    return null;
  }

  /** Connects to a device; null after it was said why not. */
  @Nullable TinybDevice connect(
      String adapterName, String address, long discoveryMillis, long connectingMillis) {
    BluetoothAdapter adapter = adapter(adapterName);
    BluetoothDevice device = adapter == null ? null : known(adapter, address, discoveryMillis);
    if (adapter == null || device == null) {
      return null;
    }
    boolean before = device.getConnected();
    try {
      if (!before && !device.connect()) {
        output.refused("NOT_CONNECTED", "the service did not say why");
        return null;
      }
    } catch (BluetoothException refused) {
      output.refused("NOT_CONNECTED", String.valueOf(refused.getMessage()));
      return null;
    }
    TinybDevice connected = new TinybDevice(manager, adapter, device, !before, output);
    return connected.describe(connectingMillis) ? connected : null;
  }

  private @Nullable BluetoothDevice known(
      BluetoothAdapter adapter, String address, long discoveryMillis) {
    BluetoothDevice device = find(adapter, address);
    if (device != null) {
      return device;
    }
    adapter.startDiscovery();
    long start = System.nanoTime();
    while (device == null && System.nanoTime() - start < discoveryMillis * 1_000_000) {
      TinybDevice.pause(LOOK_MILLIS);
      device = find(adapter, address);
    }
    if (device == null) {
      adapter.getDevices().forEach(this::sighted);
      output.refused("NOT_HEARD", address);
    }
    adapter.stopDiscovery();
    return device;
  }

  private static @Nullable BluetoothDevice find(BluetoothAdapter adapter, String address) {
    return adapter.getDevices().stream()
        .filter(device -> device.getAddress().equalsIgnoreCase(address))
        .findFirst()
        .orElse(null);
  }
}
