package datumpeg.desktop.app;

import datumpeg.bridge.failure.OuterWorldException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.stage.Stage;

/**
 * The life of the toolkit: started, one window opened, all ended when that is closed. Kept apart
 * from the command, so that other commands never load a class of the toolkit.
 */
final class WindowRun {
  private static final long SECONDS_TO_OPEN = 30;

  private WindowRun() {}

  /**
   * Opens the window and returns when it was closed.
   *
   * @throws OuterWorldException if the display does not answer
   */
  static void untilClosed(Supplier<LiveWindow> made) throws InterruptedException {
    CountDownLatch closed = new CountDownLatch(1);
    CompletableFuture<LiveWindow> opened = new CompletableFuture<>();
    startToolkit(() -> open(made, opened, closed));
    try {
      LiveWindow window = awaited(opened);
      try {
        closed.await();
      } finally {
        window.close();
      }
    } finally {
      Platform.exit();
    }
  }

  private static void open(
      Supplier<LiveWindow> made, CompletableFuture<LiveWindow> opened, CountDownLatch closed) {
    try {
      Stage stage = new Stage();
      stage.setOnHidden(event -> closed.countDown());
      LiveWindow window = made.get();
      window.openOn(stage);
      opened.complete(window);
    } catch (RuntimeException e) {
      opened.completeExceptionally(e);
    }
  }

  private static void startToolkit(Runnable first) {
    try {
      Platform.startup(first);
    } catch (UnsupportedOperationException e) {
      throw displayDoesNotAnswer(e);
    }
  }

  private static LiveWindow awaited(CompletableFuture<LiveWindow> opened)
      throws InterruptedException {
    try {
      return opened.get(SECONDS_TO_OPEN, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      throw displayDoesNotAnswer(e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("The window could not be put together.", e.getCause());
    }
  }

  private static OuterWorldException displayDoesNotAnswer(Exception cause) {
    return new OuterWorldException(
        "The window cannot open: the display does not answer. Start it from a graphical session,"
            + " or use the other commands, which need no display.",
        cause);
  }
}
