package datumpeg.desktop.control;

import java.util.List;
import javafx.animation.AnimationTimer;
import javafx.collections.ObservableList;

/**
 * Brings a shown list to a new content a few rows a pulse: rows that come into sight are made and
 * styled within one pulse, and many of them would stop the window for as long. Rows out of sight
 * are not made, so those beyond a screenful come all at once.
 *
 * <p>The JavaFX thread only.
 */
public final class InSteps<T> {
  private static final int ROWS_OF_A_PULSE = 3;
  private static final int ROWS_OF_A_SCREEN = 15;

  private final ObservableList<T> shown;
  private List<? extends T> wanted = List.of();
  private final AnimationTimer timer =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          step();
        }
      };

  public InSteps(ObservableList<T> shown) {
    this.shown = shown;
  }

  /** The newest content counts; the first rows come at once. */
  public void bring(List<? extends T> newContent) {
    wanted = List.copyOf(newContent);
    step();
    if (shown.size() < wanted.size()) {
      timer.start();
    }
  }

  private void step() {
    int next = shown.size() + ROWS_OF_A_PULSE;
    boolean rest = next >= ROWS_OF_A_SCREEN || next >= wanted.size();
    SteadyList.bring(shown, rest ? wanted : wanted.subList(0, next));
    if (rest) {
      timer.stop();
    }
  }
}
