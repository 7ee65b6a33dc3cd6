package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Predicate;
import javafx.application.Platform;
import javafx.embed.swing.SwingFXUtils;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListCell;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.text.Text;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Assumptions;

/**
 * A toolkit without a display for tests of screens: started once, everything done on its thread.
 */
public final class HeadlessToolkit {
  private static final long SECONDS = 60;

  /** Long lists come a few rows a pulse. */
  private static final int PULSES_TO_COME_TO_REST = 8;

  /** What is laid out may ask for another place. */
  private static final int LAYOUT_PASSES = 3;

  private HeadlessToolkit() {}

  /** Starts the toolkit, or skips the test with the reason when a library is missing. */
  public static void start() {
    DisplayCheck.ofThisMachine(System.getenv())
        .whatIsMissing()
        .ifPresent(sentence -> Assumptions.abort("screens are not tested: " + sentence));
    CompletableFuture<Void> started = new CompletableFuture<>();
    try {
      Platform.startup(() -> started.complete(null));
    } catch (IllegalStateException e) {
      started.complete(null); // another test class started it
    }
    await(started);
    Platform.setImplicitExit(false);
  }

  /** Does something on the toolkit's thread and waits for it. */
  public static <T> T on(Callable<T> work) {
    CompletableFuture<T> done = new CompletableFuture<>();
    Executor thread = Platform.isFxApplicationThread() ? Runnable::run : Platform::runLater;
    thread.execute(
        () -> {
          try {
            done.complete(work.call());
          } catch (Throwable e) {
            done.completeExceptionally(e);
          }
        });
    return await(done);
  }

  /** As {@link #on(Callable)}, without a result. */
  public static void run(Runnable work) {
    on(
        () -> {
          work.run();
          return true;
        });
  }

  /** Waits until something holds on the toolkit's thread, looking at every pulse. */
  public static void until(String what, Callable<Boolean> holds) {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS);
    while (!on(holds)) {
      assertTrue(System.nanoTime() < end, "It did not come about: " + what);
      nextPulse();
    }
  }

  private static void nextPulse() {
    CompletableFuture<Void> pulse = new CompletableFuture<>();
    Platform.runLater(
        () ->
            new javafx.animation.AnimationTimer() {
              @Override
              public void handle(long now) {
                stop();
                pulse.complete(null);
              }
            }.start());
    await(pulse);
  }

  /** A picture of the scene, come to rest. */
  public static WritableImage picture(Scene scene) {
    comeToRest();
    return on(() -> scene.snapshot(null));
  }

  /**
   * Looks at a scene that has come to rest and is laid out to the last: what another thread has
   * told it in between would else stand there with neither its place nor its letters. Not for the
   * toolkit's own thread.
   */
  public static <T> T atRest(Scene scene, Callable<T> look) {
    comeToRest();
    return on(
        () -> {
          for (int pass = 0; pass < LAYOUT_PASSES; pass++) {
            scene.getRoot().applyCss();
            scene.getRoot().layout();
          }
          return look.call();
        });
  }

  /** What was told to the screen just now is laid out with the pulses that follow. */
  private static void comeToRest() {
    for (int pulse = 0; pulse < PULSES_TO_COME_TO_REST; pulse++) {
      nextPulse();
    }
  }

  public static void save(WritableImage picture, File file) {
    try {
      ImageIO.write(SwingFXUtils.fromFXImage(picture, null), "png", file);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /** How many pixels of a part of the picture are dark, as letters are. */
  public static int darkPixels(WritableImage picture, javafx.geometry.Bounds part) {
    PixelReader pixels = picture.getPixelReader();
    int dark = 0;
    for (int y = (int) part.getMinY(); y < Math.min(part.getMaxY(), picture.getHeight()); y++) {
      for (int x = (int) part.getMinX(); x < Math.min(part.getMaxX(), picture.getWidth()); x++) {
        dark += pixels.getColor(x, y).grayscale().getRed() < 0.5 ? 1 : 0;
      }
    }
    return dark;
  }

  /** Every node under a parent that fits, itself included; on the toolkit's thread. */
  public static List<Node> find(Node from, Predicate<Node> fits) {
    List<Node> found = new ArrayList<>();
    if (fits.test(from)) {
      found.add(from);
    }
    if (from instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> found.addAll(find(child, fits)));
    }
    return found;
  }

  /** Drawings are made off the toolkit's thread. */
  public static void untilDrawn(Scene scene) {
    until(
        "the drawings of the findings",
        () -> {
          Node plan = scene.lookup(".plan");
          return plan != null && !String.valueOf(plan.getAccessibleText()).isEmpty();
        });
  }

  /** What a screen reader says of each job in sight, in their order. */
  public static List<String> spokenJobs(Scene scene) {
    return on(
        () ->
            find(scene.getRoot(), each -> each.getStyleClass().contains("job-cell")).stream()
                .map(each -> (ListCell<?>) each)
                .filter(cell -> cell.isVisible() && cell.getItem() != null)
                .sorted(Comparator.comparing(ListCell::getIndex))
                .map(Node::getAccessibleText)
                .toList());
  }

  /**
   * Texts under a node that are cut once the screen has come to rest: a label whose text is cut
   * draws another than it was given. Not for the toolkit's own thread.
   */
  public static List<String> cutTexts(Node root) {
    return atRest(
        on(root::getScene),
        () ->
            find(root, HeadlessToolkit::isCut).stream()
                .map(node -> ((Labeled) node).getText())
                .toList());
  }

  private static boolean isCut(Node node) {
    return node instanceof Labeled label
        && label.getText() != null
        && find(label, each -> each instanceof Text).stream()
            .filter(text -> text.getStyleClass().contains("text"))
            .filter(text -> text.getParent() == label)
            .anyMatch(text -> !((Text) text).getText().equals(label.getText()));
  }

  private static <T> T await(CompletableFuture<T> future) {
    try {
      return future.get(SECONDS, TimeUnit.SECONDS);
    } catch (ExecutionException e) {
      throw new AssertionError(e.getCause());
    } catch (TimeoutException e) {
      throw new AssertionError("The toolkit did not answer within " + SECONDS + " s.", e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(e);
    }
  }
}
