package datumpeg.desktop.control;

import datumpeg.desktop.background.WorkState;
import datumpeg.desktop.text.Words;
import java.util.List;
import javafx.animation.PauseTransition;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.util.Duration;
import org.jspecify.annotations.Nullable;

/** Says what is being done and how far it is, once that takes longer than half a second. */
public final class WorkBar extends HBox {
  private static final Duration PATIENCE = Duration.millis(500);

  private final Words words;
  private final Runnable cancel;
  private @Nullable Parts parts;
  private boolean running;

  public WorkBar(Words words, Runnable cancel) {
    this.words = words;
    this.cancel = cancel;
    getStyleClass().add("work-bar");
    setVisible(false);
    setManaged(false);
  }

  /** What the bar holds once there was work. */
  private record Parts(Label what, ProgressBar progress, Button stop, PauseTransition patience) {
    List<Node> nodes() {
      return List.of(what, progress, stop);
    }
  }

  private Parts parts() {
    Parts known = parts;
    if (known == null) {
      Button stop = new Button(words.text("work.cancel"));
      stop.setId("work-cancel");
      stop.setOnAction(event -> cancel.run());
      known = new Parts(new Label(), new ProgressBar(), stop, new PauseTransition(PATIENCE));
      known.patience().setOnFinished(event -> shown(running));
      parts = known;
    }
    return known;
  }

  public void show(WorkState state) {
    if (state.isRunning()) {
      String told =
          state.of() > 0
              ? words.text("work.part", state.name(), state.done(), state.of())
              : words.text("work.running", state.name());
      parts().what().setText(told);
      parts().progress().setProgress(state.fraction());
      parts().progress().setAccessibleText(told);
    }
    if (state.isRunning() != running) {
      running = state.isRunning();
      parts().patience().stop();
      if (running) {
        parts().patience().playFromStart();
      } else {
        shown(false);
      }
    }
  }

  private void shown(boolean now) {
    getChildren().setAll(now ? parts().nodes() : List.of());
    setVisible(now);
    setManaged(now);
  }
}
