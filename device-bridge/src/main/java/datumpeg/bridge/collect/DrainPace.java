package datumpeg.bridge.collect;

import datumpeg.bridge.link.LinkClock;
import java.time.Duration;

/**
 * When what waits to be stored is tried again: every few seconds, whether meters talk meanwhile or
 * not. One thread.
 */
final class DrainPace {
  static final Duration PAUSE = Duration.ofSeconds(5);

  private final ReadingStore store;
  private final LinkClock clock;
  private long triedNanos;

  DrainPace(ReadingStore store, LinkClock clock) {
    this.store = store;
    this.clock = clock;
    this.triedNanos = clock.monotonicNanos();
  }

  /** Tries it if something waits and the pause is over. */
  void tryAgain() {
    if (store.waitingCount() > 0 && clock.monotonicNanos() - triedNanos >= PAUSE.toNanos()) {
      store.drain();
      triedNanos = clock.monotonicNanos();
    }
  }
}
