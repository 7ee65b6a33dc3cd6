package datumpeg.bridge.collect;

import datumpeg.bridge.link.LinkClock;
import java.time.Instant;

/**
 * A time of day that never steps while a session runs: the one at its start, carried on by the
 * clock that never steps. When the computer's clock is set meanwhile, readings keep their order and
 * their distance in time. Immutable.
 */
public final class SteadyClock implements LinkClock {
  private final LinkClock clock;
  private final Instant start;
  private final long startNanos;

  public SteadyClock(LinkClock clock) {
    this.clock = clock;
    this.start = clock.now();
    this.startNanos = clock.monotonicNanos();
  }

  @Override
  public Instant now() {
    return start.plusNanos(clock.monotonicNanos() - startNanos);
  }

  @Override
  public long monotonicNanos() {
    return clock.monotonicNanos();
  }
}
