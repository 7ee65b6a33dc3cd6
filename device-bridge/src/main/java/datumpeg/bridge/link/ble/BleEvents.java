package datumpeg.bridge.link.ble;

import datumpeg.bridge.frame.Bytes;

/** Hears a connection. Thread-safe; returns at once. */
public interface BleEvents {

  /** A notification or an indication of a characteristic that was subscribed to. */
  void notified(String handle, Bytes value);

  /** What the system says of the meter's battery. */
  void battery(int percent);

  /** The connection is gone, and why, in words that follow a colon. */
  void gone(String why);
}
