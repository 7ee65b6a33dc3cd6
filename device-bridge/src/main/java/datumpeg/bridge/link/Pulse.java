package datumpeg.bridge.link;

/**
 * Tells a meter that sends by itself, time after time, from one that sends when a person measures:
 * of the first kind silence means that something is stalled, of the second it means little. One
 * thread.
 */
final class Pulse {
  /** Nearer together they are pieces of one message. */
  private static final long SAME_MESSAGE_NANOS = 100_000_000L;

  /** Nobody measures one target after the other so fast for long. Common practice, no source. */
  private static final long STEADY_NANOS = 1_000_000_000L;

  private static final int STEADY_BEATS = 8;

  private long lastBeatNanos;
  private long lastHeardNanos;
  private int beats;

  Pulse(long nowNanos) {
    this.lastBeatNanos = nowNanos;
    this.lastHeardNanos = nowNanos;
  }

  /** Bytes came. */
  void heard(long nowNanos) {
    lastHeardNanos = nowNanos;
    long gap = nowNanos - lastBeatNanos;
    if (gap >= SAME_MESSAGE_NANOS) {
      beats = gap <= STEADY_NANOS ? Math.min(beats + 1, STEADY_BEATS) : 0;
      lastBeatNanos = nowNanos;
    }
  }

  /** Whether it has been sending by itself: eight beats, each within a second of the one before. */
  boolean isSteady() {
    return beats >= STEADY_BEATS;
  }

  long silentNanos(long nowNanos) {
    return nowNanos - lastHeardNanos;
  }
}
