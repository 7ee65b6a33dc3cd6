package datumpeg.bridge.link.ble;

import datumpeg.bridge.link.ble.tinyb.TinybBackend;

/** BlueZ by way of the native library TinyB, in a process of its own. */
class TinybContractTest extends BleContract {
  @Override
  BleBackend backend(String busAddress, Patience patience) {
    return new TinybBackend(busAddress, patience);
  }
}
