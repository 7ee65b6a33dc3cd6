package datumpeg.desktop.background;

import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Work that may take longer than half a second: done on a thread of its own, one piece at a time,
 * told of as it goes on, and stopped when the user wants no more of it.
 *
 * <p>Used from the receiving thread only.
 */
public final class LongWork {

  /** A piece of work; what it throws is told to the one who started it. */
  @FunctionalInterface
  public interface Task<T> {
    T run(Progress progress) throws Exception;
  }

  private final Executor receivingThread;
  private final NewestValue<WorkState> told;
  private @Nullable AtomicBoolean stop;

  /**
   * No work yet.
   *
   * @param receivingThread runs a task on the JavaFX thread
   * @param watcher is told, there, what is being done and how far it is
   */
  public LongWork(Executor receivingThread, Consumer<WorkState> watcher) {
    this.receivingThread = receivingThread;
    this.told = new NewestValue<>(receivingThread, watcher);
  }

  /**
   * Begins a piece of work.
   *
   * @param name what is being done, in words
   * @param done is given the result on the receiving thread
   * @param failed is given what the work threw; nothing when the user stopped it
   * @return false if another piece of work is still going on
   */
  public <T> boolean start(
      String name, Task<T> task, Consumer<? super T> done, Consumer<Exception> failed) {
    if (stop != null) {
      return false;
    }
    AtomicBoolean wanted = new AtomicBoolean();
    stop = wanted;
    told.put(new WorkState(name, 0, 0));
    Thread thread = new Thread(() -> run(name, task, wanted, done, failed), name);
    thread.setDaemon(true);
    thread.start();
    return true;
  }

  /** Asks the work to stop at its next step. */
  public void cancel() {
    AtomicBoolean now = stop;
    if (now != null) {
      now.set(true);
    }
  }

  private <T> void run(
      String name,
      Task<T> task,
      AtomicBoolean wanted,
      Consumer<? super T> done,
      Consumer<Exception> failed) {
    Runnable end;
    try {
      T result =
          task.run(
              (part, of) -> {
                if (wanted.get()) {
                  throw new CancellationException(name);
                }
                told.put(new WorkState(name, part, of));
              });
      end = () -> done.accept(result);
    } catch (CancellationException e) {
      end = () -> {};
    } catch (Exception e) { // the top of a thread: told to who asked for the work
      end = () -> failed.accept(e);
    }
    Runnable last = end;
    receivingThread.execute(() -> finish(last));
  }

  private void finish(Runnable last) {
    stop = null;
    told.put(WorkState.NOTHING);
    last.run();
  }
}
