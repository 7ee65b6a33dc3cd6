package datumpeg.bridge.collect;

import datumpeg.bridge.link.LinkClock;
import java.time.Duration;

/**
 * When what waits to be stored is tried again: after a pause, whether meters talk meanwhile or not.
 * One thread.
 */
final class DrainPace {
  private final LinkClock clock;
  private final Duration pause;
  private long triedNanos;

  DrainPace(LinkClock clock, Duration pause) {
    this.clock = clock;
    this.pause = pause;
    this.triedNanos = clock.monotonicNanos();
  }

  /** After so long without an event it is time to try. */
  Duration pause() {
    return pause;
  }

  /** Tries it if so many wait and the pause is over. */
  void tryAgain(int waitingCount, Runnable drain) {
    if (waitingCount > 0 && clock.monotonicNanos() - triedNanos >= pause.toNanos()) {
      drain.run();
      triedNanos = clock.monotonicNanos();
    }
  }
}
