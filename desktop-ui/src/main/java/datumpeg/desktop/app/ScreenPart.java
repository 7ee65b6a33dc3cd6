package datumpeg.desktop.app;

import datumpeg.desktop.source.RecordState;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.scene.Node;
import org.jspecify.annotations.Nullable;

/**
 * One screen as the window knows it: how it is made, and what it is told. Its node is made when it
 * is first shown, only then is it told what was chosen before, and it is brought to the record's
 * state only while it is shown, so that a screen nobody looks at costs nothing.
 *
 * <p>The JavaFX thread only.
 */
final class ScreenPart {
  private final Screen screen;
  private final Supplier<? extends Node> made;
  private final Consumer<RecordState> follow;
  private final @Nullable BiConsumer<String, String> choose;
  private BooleanSupplier ofAllJobs = () -> false;
  private @Nullable Node node;
  private @Nullable RecordState seen;
  private @Nullable Runnable chosen;

  private ScreenPart(
      Screen screen,
      Supplier<? extends Node> made,
      Consumer<RecordState> follow,
      @Nullable BiConsumer<String, String> choose) {
    this.screen = screen;
    this.made = made;
    this.follow = follow;
    this.choose = choose;
  }

  /** A screen that needs nothing of the record. */
  static ScreenPart of(Screen screen, Supplier<? extends Node> made) {
    return new ScreenPart(screen, made, state -> {}, null);
  }

  /** The same screen, told each state of the record while it is shown. */
  ScreenPart following(Consumer<RecordState> newFollow) {
    return new ScreenPart(screen, made, follow.andThen(newFollow), choose);
  }

  /** The same screen, told each job that is chosen, and its stage or an empty text. */
  ScreenPart ofJob(BiConsumer<String, String> newChoose) {
    return new ScreenPart(screen, made, follow, newChoose);
  }

  /**
   * This screen, for which the outcomes of all jobs are wanted while it is shown and this holds.
   */
  ScreenPart ofAllJobs(BooleanSupplier wanted) {
    ofAllJobs = wanted;
    return this;
  }

  boolean isOfAllJobs() {
    return ofAllJobs.getAsBoolean();
  }

  /** Whether it shows one job. */
  boolean isOfJob() {
    return choose != null;
  }

  Screen screen() {
    return screen;
  }

  Node node() {
    Node known = node;
    if (known == null) {
      known = made.get();
      node = known;
      tellChosen();
    }
    return known;
  }

  void show(RecordState state) {
    if (node != null && !state.equals(seen)) {
      seen = state;
      follow.accept(state);
    }
  }

  /** The next state is shown even if it is the same: something else it depends on has changed. */
  void forget() {
    seen = null;
  }

  void choose(String job, String stage) {
    BiConsumer<String, String> told = choose;
    if (told != null) {
      chosen = () -> told.accept(job, stage);
      if (node != null) {
        tellChosen();
      }
    }
  }

  private void tellChosen() {
    Runnable now = chosen;
    chosen = null;
    if (now != null) {
      now.run();
    }
  }
}
