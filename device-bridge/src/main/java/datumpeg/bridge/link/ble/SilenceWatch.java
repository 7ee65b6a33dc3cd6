package datumpeg.bridge.link.ble;

/**
 * Says when a silence is worth a question. A meter that measures when told is silent for minutes
 * and well; so after ten seconds without a word it is asked whether it is there, and again every
 * ten (common practice, no source). One thread.
 *
 * <p>All times in nanoseconds of a clock that never steps.
 */
final class SilenceWatch {
  static final long ASK_NANOS = 10_000_000_000L;

  private long lastNanos;

  SilenceWatch(long nowNanos) {
    this.lastNanos = nowNanos;
  }

  /** The meter said something, or was just asked. */
  void restart(long nowNanos) {
    lastNanos = nowNanos;
  }

  boolean isWorthAsking(long nowNanos) {
    return nowNanos - lastNanos >= ASK_NANOS;
  }
}
