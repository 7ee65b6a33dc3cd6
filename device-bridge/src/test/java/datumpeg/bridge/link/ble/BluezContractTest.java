package datumpeg.bridge.link.ble;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.RecordingListener;
import datumpeg.bridge.link.ble.bluez.BluezBackend;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** BlueZ over D-Bus, in Java alone. */
class BluezContractTest extends BleContract {
  @Override
  BleBackend backend(String busAddress, Patience patience) {
    return new BluezBackend(busAddress, patience);
  }

  /** Beyond the contract: TinyB does not know what the system says of batteries. */
  @Test
  void whatTheSystemKnowsOfABatteryIsTold() throws Exception {
    meter.battery(64);
    RecordingListener listener = new RecordingListener();
    try (BleLink link = open(Set.of(InventedMeter.DISTANCE), listener)) {
      Chunk level = listener.awaitChunk(GattNames.BATTERY_LEVEL);
      while (!level.bytes().hex().equals("40")) {
        level = listener.awaitChunk(GattNames.BATTERY_LEVEL);
      }
      assertEquals("ble:" + InventedMeter.ADDRESS, link.address().text());
    }
  }
}
