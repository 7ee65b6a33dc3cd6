package datumpeg.bridge.link;

import java.time.Instant;

/** The two clocks by which a link stamps what it receives. Thread-safe. */
public interface LinkClock {

  /** The time of day. */
  Instant now();

  /** Nanoseconds of a clock that never steps, from an arbitrary start. */
  long monotonicNanos();

  /** The clocks of this machine. */
  static LinkClock system() {
    return new LinkClock() {
      @Override
      public Instant now() {
        return Instant.now();
      }

      @Override
      public long monotonicNanos() {
        return System.nanoTime();
      }
    };
  }
}
