package datumpeg.bridge.link.ble;

import datumpeg.bridge.link.LinkAddress;
import java.time.Duration;
import java.util.List;

/** One way of reaching Bluetooth LE meters. Thread-safe. */
public interface BleBackend {

  /**
   * Listens for meters.
   *
   * @param adapter such as {@code hci0}; empty for the first there is
   * @return those heard, and those the system knows already, by address
   * @throws datumpeg.bridge.link.LinkUnavailableException if this machine cannot listen
   */
  List<BleSighting> discover(String adapter, Duration howLong);

  /**
   * Connects to one meter, waits until its services are known, and subscribes to nothing yet.
   *
   * @param events hears what happens from now on, on any thread
   * @throws datumpeg.bridge.link.LinkUnavailableException if it cannot be reached
   */
  BleConnection connect(LinkAddress.Ble address, BleEvents events);
}
