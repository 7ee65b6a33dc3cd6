package datumpeg.desktop.control;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import javafx.animation.AnimationTimer;

/**
 * Does pieces of work one a pulse: nodes that come on screen for the first time are made, styled
 * and laid out within one pulse, and all of a page at once would stop the window for as long.
 *
 * <p>The JavaFX thread only.
 */
public final class OneAPulse {
  private final Deque<Runnable> waiting = new ArrayDeque<>();
  private final AnimationTimer timer =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          step();
        }
      };

  /** Does the first in the next pulse; what was still waiting is dropped for them. */
  public void run(List<Runnable> pieces) {
    waiting.clear();
    waiting.addAll(pieces);
    timer.start();
  }

  private void step() {
    Runnable next = waiting.poll();
    if (next != null) {
      next.run();
    }
    if (waiting.isEmpty()) {
      timer.stop();
    }
  }
}
