package datumpeg.bridge.link;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A timer and the clock it goes by, moved on by the test's hand. One thread. */
public final class HandTimer implements LinkTimer, LinkClock {
  private static final Instant START = Instant.parse("2026-03-02T08:15:00Z");

  private final List<Task> tasks = new ArrayList<>();
  private long nanos;
  private boolean closed;

  private record Task(long atNanos, Runnable what) {}

  @Override
  public void after(Duration delay, Runnable task) {
    if (!closed) {
      tasks.add(new Task(nanos + delay.toNanos(), task));
    }
  }

  @Override
  public void close() {
    closed = true;
    tasks.clear();
  }

  @Override
  public Instant now() {
    return START.plusNanos(nanos);
  }

  @Override
  public long monotonicNanos() {
    return nanos;
  }

  /** Lets time pass and does what falls due, in its order. */
  public void pass(Duration time) {
    long end = nanos + time.toNanos();
    for (Task due = next(); due != null && due.atNanos() <= end; due = next()) {
      tasks.remove(due);
      nanos = due.atNanos();
      due.what().run();
    }
    nanos = end;
  }

  private @Nullable Task next() {
    return tasks.stream().min(Comparator.comparingLong(Task::atNanos)).orElse(null);
  }

  public boolean isClosed() {
    return closed;
  }
}
