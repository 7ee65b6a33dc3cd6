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

/** Says what is being done and how far it is, once that takes longer than half a second. */
public final class WorkBar extends HBox {
  private static final Duration PATIENCE = Duration.millis(500);

  private final Words words;
  private final Label what = new Label();
  private final ProgressBar progress = new ProgressBar();
  private final PauseTransition patience = new PauseTransition(PATIENCE);
  private final List<Node> parts;
  private boolean running;

  public WorkBar(Words words, Runnable cancel) {
    this.words = words;
    getStyleClass().add("work-bar");
    Button stop = new Button(words.text("work.cancel"));
    stop.setId("work-cancel");
    stop.setOnAction(event -> cancel.run());
    parts = List.of(what, progress, stop);
    patience.setOnFinished(event -> shown(running));
    shown(false);
  }

  public void show(WorkState state) {
    if (state.isRunning()) {
      String told =
          state.of() > 0
              ? words.text("work.part", state.name(), state.done(), state.of())
              : words.text("work.running", state.name());
      what.setText(told);
      progress.setProgress(state.fraction());
      progress.setAccessibleText(told);
    }
    if (state.isRunning() != running) {
      running = state.isRunning();
      patience.stop();
      if (running) {
        patience.playFromStart();
      } else {
        shown(false);
      }
    }
  }

  private void shown(boolean now) {
    getChildren().setAll(now ? parts : List.of());
    setVisible(now);
    setManaged(now);
  }
}
