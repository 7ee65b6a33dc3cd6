package datumpeg.desktop.background;

import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Hands values from any thread to one receiver on another; when several come before the receiver
 * had its turn it gets only the newest. So a busy screen never falls behind a stream of values.
 *
 * <p>Thread-safe.
 *
 * @param <T> an immutable value
 */
public final class NewestValue<T> {
  private final Executor receivingThread;
  private final Consumer<? super T> receiver;
  private final AtomicReference<@Nullable T> waiting = new AtomicReference<>();

  /**
   * A hand-over to the receiver.
   *
   * @param receivingThread runs a task on the receiver's thread, such as {@code Platform::runLater}
   */
  public NewestValue(Executor receivingThread, Consumer<? super T> receiver) {
    this.receivingThread = receivingThread;
    this.receiver = receiver;
  }

  /** Hands over a value; returns at once. */
  public void put(T value) {
    if (waiting.getAndSet(value) == null) {
      receivingThread.execute(this::deliver);
    }
  }

  private void deliver() {
    T value = waiting.getAndSet(null);
    if (value != null) {
      receiver.accept(value);
    }
  }
}
