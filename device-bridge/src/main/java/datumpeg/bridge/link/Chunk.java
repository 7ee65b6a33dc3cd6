package datumpeg.bridge.link;

import datumpeg.bridge.frame.Bytes;
import java.time.Instant;

/**
 * Some bytes of a link with the time they were received. Where a chunk begins and ends means
 * nothing.
 *
 * @param bytes at least one
 * @param receivedAt by the wall clock
 * @param monotonicNanos by a clock that never steps; only differences mean something
 * @param channel which of the link's channels; a serial port has only {@link #ONLY_CHANNEL}
 */
public record Chunk(Bytes bytes, Instant receivedAt, long monotonicNanos, String channel) {
  /** The channel of a link that has one. */
  public static final String ONLY_CHANNEL = "data";

  public Chunk {
    if (bytes.isEmpty()) {
      throw new IllegalArgumentException("a chunk has at least one byte");
    }
  }
}
