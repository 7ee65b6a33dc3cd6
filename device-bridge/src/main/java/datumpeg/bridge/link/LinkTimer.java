package datumpeg.bridge.link;

import java.time.Duration;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Does things later, one after the other. Thread-safe. */
public interface LinkTimer extends AutoCloseable {

  /** Does something after a while; nothing if the timer is closed by then. */
  void after(Duration delay, Runnable task);

  /** Drops what was to be done. */
  @Override
  void close();

  /** A timer with one thread of its own, which does not keep the program alive. */
  static LinkTimer onThread(String name) {
    ScheduledThreadPoolExecutor executor =
        new ScheduledThreadPoolExecutor(
            1,
            task -> {
              Thread thread = new Thread(task, name);
              thread.setDaemon(true);
              return thread;
            });
    executor.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
    return new LinkTimer() {
      @Override
      public void after(Duration delay, Runnable task) {
        try {
          Future<?> unused = // guarded() keeps no failure in it
              executor.schedule(() -> guarded(task), delay.toNanos(), TimeUnit.NANOSECONDS);
        } catch (RejectedExecutionException closed) {
          return; // as promised
        }
      }

      @Override
      public void close() {
        executor.shutdown();
      }
    };
  }

  /** The executor would keep a failure to itself. */
  private static void guarded(Runnable task) {
    try {
      task.run();
    } catch (RuntimeException defect) {
      Logger log = LoggerFactory.getLogger(LinkTimer.class);
      log.error("A task of the timer failed", defect);
    }
  }
}
