package datumpeg.desktop.background;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * One daemon thread that does the same piece of work again and again until it is closed.
 *
 * <p>Thread-safe. Whoever made it closes it.
 */
public final class RepeatedWork implements AutoCloseable {
  private static final Duration LONGEST_WAIT_FOR_THE_END = Duration.ofSeconds(5);

  private final Duration pause;
  private final Runnable work;
  private final Runnable lastWork;
  private final Consumer<Throwable> defect;
  private final Semaphore wake = new Semaphore(0);
  private final Thread thread;
  private volatile boolean closed;

  /**
   * The work, not yet begun.
   *
   * @param name of the thread
   * @param pause between two turns
   * @param work one turn
   * @param lastWork done on the same thread when no turn follows
   * @param defect is told what a turn threw; the next turn comes all the same
   */
  public RepeatedWork(
      String name, Duration pause, Runnable work, Runnable lastWork, Consumer<Throwable> defect) {
    this.pause = pause;
    this.work = work;
    this.lastWork = lastWork;
    this.defect = defect;
    this.thread = new Thread(this::run, name);
    thread.setDaemon(true);
  }

  public void start() {
    thread.start();
  }

  /** Ends the present pause: the next turn comes now. */
  public void hurry() {
    wake.release();
  }

  /** Lets the present turn end and no other begin; waits a few seconds for it at most. */
  @Override
  public void close() {
    closed = true;
    hurry();
    try {
      thread.join(LONGEST_WAIT_FOR_THE_END.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    try {
      while (!closed) {
        guarded(work);
        if (wake.tryAcquire(pause.toMillis(), TimeUnit.MILLISECONDS)) {
          wake.drainPermits();
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      guarded(lastWork);
    }
  }

  private void guarded(Runnable turn) {
    try {
      turn.run();
    } catch (Throwable e) { // the top of the thread: it must not end unsaid, whatever is thrown
      defect.accept(e);
    }
  }
}
