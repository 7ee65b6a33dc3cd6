package datumpeg.bridge.link.ble;

import datumpeg.bridge.link.LinkClock;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicLong;

/** A clock that a test moves. Thread-safe. */
public final class SteppedClock implements LinkClock {
  private static final Instant START = Instant.parse("2026-03-02T08:15:30Z");

  private final AtomicLong nanos = new AtomicLong(1_000_000_000_000L);

  public void advance(Duration duration) {
    nanos.addAndGet(duration.toNanos());
  }

  @Override
  public Instant now() {
    return START.plusNanos(nanos.get());
  }

  @Override
  public long monotonicNanos() {
    return nanos.get();
  }
}
