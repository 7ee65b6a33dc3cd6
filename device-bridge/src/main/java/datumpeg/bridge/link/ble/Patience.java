package datumpeg.bridge.link.ble;

import java.time.Duration;

/**
 * How long a backend waits for what a meter or its radio may never do.
 *
 * @param discovery for a meter that is not known yet to be heard
 * @param connecting for the connection, and again for its services to be known
 * @param answer for one question
 */
public record Patience(Duration discovery, Duration connecting, Duration answer) {
  /** A daemon tries to connect for up to some 25 s before it gives up (seen with BlueZ 5.66). */
  public static final Patience USUAL =
      new Patience(Duration.ofSeconds(10), Duration.ofSeconds(30), Duration.ofSeconds(5));
}
