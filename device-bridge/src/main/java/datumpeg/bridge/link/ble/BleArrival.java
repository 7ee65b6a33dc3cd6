package datumpeg.bridge.link.ble;

import datumpeg.bridge.frame.Bytes;
import java.time.Instant;

/** Something a connection told, with the time, on its way to the link's thread. */
sealed interface BleArrival {

  /** A value of a characteristic. */
  record Notified(String handle, Bytes value, Instant at, long monotonicNanos)
      implements BleArrival {}

  /** The battery's level. */
  record Battery(int percent, Instant at, long monotonicNanos) implements BleArrival {}

  /** The end. */
  record Gone(String why) implements BleArrival {}
}
