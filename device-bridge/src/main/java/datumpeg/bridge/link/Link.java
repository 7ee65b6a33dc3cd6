package datumpeg.bridge.link;

import datumpeg.bridge.frame.Bytes;

/**
 * A connection that delivers bytes. It is open when one has it; one thread of its own tells the
 * listener what comes. Thread-safe.
 */
public interface Link extends AutoCloseable {

  /** The link as a person named it. */
  LinkAddress address();

  /**
   * Sends bytes to the meter, for instance its command to take a measurement.
   *
   * @throws LinkLostException if the link is gone or closed
   */
  void send(Bytes bytes);

  /** Ends the link and its thread; the listener hears nothing afterwards. May be called twice. */
  @Override
  void close();
}
