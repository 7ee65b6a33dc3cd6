package datumpeg.desktop.background;

import java.util.concurrent.Executor;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Answers questions off the JavaFX thread, the newest alone: one asked while another is worked on
 * takes the place of those that wait. So a busy record never builds a queue of pictures nobody
 * wants any more.
 *
 * <p>Thread-safe.
 *
 * @param <Q> an immutable question
 * @param <A> an immutable answer
 */
public final class LatestAnswer<Q, A> {
  private static final long SECONDS_OF_IDLENESS = 10;

  private final Executor worker;
  private final Function<? super Q, ? extends A> answering;
  private final NewestValue<A> handOver;
  private final AtomicReference<@Nullable Q> waiting = new AtomicReference<>();

  /**
   * No question yet.
   *
   * @param worker does the work, one piece at a time; see {@link #worker}
   * @param receivingThread runs a task on the receiver's thread, such as {@code Platform::runLater}
   * @param answering makes an answer of a question, never failing
   */
  public LatestAnswer(
      Executor worker,
      Executor receivingThread,
      Function<? super Q, ? extends A> answering,
      Consumer<? super A> receiver) {
    this.worker = worker;
    this.answering = answering;
    this.handOver = new NewestValue<>(receivingThread, receiver);
  }

  /** Asks; returns at once. */
  public void ask(Q question) {
    if (waiting.getAndSet(question) == null) {
      worker.execute(this::answer);
    }
  }

  private void answer() {
    Q question = waiting.getAndSet(null);
    if (question != null) {
      handOver.put(answering.apply(question));
    }
  }

  /** A daemon thread for one piece of work at a time, which ends when there is nothing to do. */
  public static Executor worker(String name) {
    ThreadPoolExecutor worker =
        new ThreadPoolExecutor(
            1,
            1,
            SECONDS_OF_IDLENESS,
            TimeUnit.SECONDS,
            new LinkedBlockingQueue<>(),
            work -> {
              Thread thread = new Thread(work, name);
              thread.setDaemon(true);
              return thread;
            });
    worker.allowCoreThreadTimeOut(true);
    return worker;
  }
}
