package datumpeg.bridge.link.ble;

import datumpeg.bridge.frame.Bytes;
import java.util.List;
import java.util.Optional;

/** A connection to one meter. Thread-safe. */
public interface BleConnection extends AutoCloseable {

  /** What the meter offers, in the order in which it lists it. */
  List<BleCharacteristic> characteristics();

  /**
   * Asks for the values of a characteristic as they come.
   *
   * @throws datumpeg.bridge.link.LinkUnavailableException if that is refused
   */
  void subscribe(BleCharacteristic characteristic);

  /** Asks the meter itself for a value, and waits some seconds. */
  Answer read(BleCharacteristic characteristic);

  /** Writes a value; returns false if it was not taken. */
  boolean write(BleCharacteristic characteristic, Bytes value);

  /** Why the connection is gone as far as this machine knows, in words; empty while it is there. */
  Optional<String> trouble();

  /** Ends the connection; may be called twice. */
  @Override
  void close();

  /**
   * What became of a question to the meter.
   *
   * @param kind whether it answered
   * @param value empty but for {@link Kind#VALUE}
   */
  record Answer(Kind kind, Bytes value) {
    /** Whether a meter answered. */
    public enum Kind {
      VALUE,
      /** This one may not be asked. */
      REFUSED,
      /** No answer in time. */
      NONE
    }

    public static Answer of(Bytes value) {
      return new Answer(Kind.VALUE, value);
    }

    public static Answer refused() {
      return new Answer(Kind.REFUSED, Bytes.empty());
    }

    public static Answer none() {
      return new Answer(Kind.NONE, Bytes.empty());
    }
  }
}
