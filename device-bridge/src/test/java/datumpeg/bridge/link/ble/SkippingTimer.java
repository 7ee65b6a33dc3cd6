package datumpeg.bridge.link.ble;

import datumpeg.bridge.link.LinkTimer;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A timer that goes by a stepped clock: pauses pass when the test lets them. Tasks run on the
 * thread that lets time pass. Thread-safe.
 */
final class SkippingTimer implements LinkTimer {
  private final SteppedClock clock;
  private final List<Task> tasks = new ArrayList<>();
  private boolean closed;

  private record Task(long atNanos, Runnable what) {}

  SkippingTimer(SteppedClock clock) {
    this.clock = clock;
  }

  @Override
  public synchronized void after(Duration delay, Runnable task) {
    if (!closed) {
      tasks.add(new Task(clock.monotonicNanos() + delay.toNanos(), task));
    }
  }

  @Override
  public synchronized void close() {
    closed = true;
    tasks.clear();
  }

  /** Lets time pass and does what has fallen due. */
  void pass(Duration time) {
    clock.advance(time);
    for (Task due = due(); due != null; due = due()) {
      due.what().run();
    }
  }

  private synchronized @Nullable Task due() {
    long now = clock.monotonicNanos();
    Task next =
        tasks.stream()
            .filter(task -> task.atNanos() <= now)
            .min(Comparator.comparingLong(Task::atNanos))
            .orElse(null);
    tasks.remove(next);
    return next;
  }
}
