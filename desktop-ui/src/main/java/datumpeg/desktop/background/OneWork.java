package datumpeg.desktop.background;

import java.time.Duration;
import java.util.function.Consumer;

/**
 * One daemon thread that does one piece of work and ends.
 *
 * <p>Thread-safe. Whoever made it closes it.
 */
public final class OneWork implements AutoCloseable {
  private static final Duration LONGEST_WAIT_FOR_THE_END = Duration.ofSeconds(5);

  private final Thread thread;

  /** Work done once; may be interrupted. */
  @FunctionalInterface
  public interface Work {
    void run() throws InterruptedException;
  }

  /**
   * The work, not yet begun.
   *
   * @param name of the thread
   * @param defect is told what the work threw, unless it was interrupted
   */
  public OneWork(String name, Work work, Consumer<Throwable> defect) {
    this.thread = new Thread(() -> guarded(work, defect), name);
    thread.setDaemon(true);
  }

  public void start() {
    thread.start();
  }

  public boolean isGoing() {
    return thread.isAlive();
  }

  /** Waits a few seconds for the end of the work, which somebody asked it to come to. */
  @Override
  public void close() {
    try {
      thread.join(LONGEST_WAIT_FOR_THE_END.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static void guarded(Work work, Consumer<Throwable> defect) {
    try {
      work.run();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (Throwable e) { // the top of the thread: it must not end unsaid, whatever is thrown
      defect.accept(e);
    }
  }
}
