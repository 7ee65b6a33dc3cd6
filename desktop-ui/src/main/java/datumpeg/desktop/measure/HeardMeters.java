package datumpeg.desktop.measure;

import datumpeg.desktop.control.Labels;
import datumpeg.desktop.measure.MeasurePage.Listening;
import datumpeg.desktop.measure.Sessions.Port;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Bluetooth LE meters in reach: a button that listens, and one for each meter heard. */
final class HeardMeters extends VBox {
  private final Words words;
  private final Consumer<Port> use;
  private final Button listen = new Button();
  private final ProgressBar progress = new ProgressBar();
  private final Label sentence = Labels.vanishing("hint");
  private final VBox meters = new VBox();
  private List<Port> shown = List.of();

  /**
   * @param other a button beside its own
   * @param use takes a meter into the session: without that it is not connected to
   */
  HeardMeters(Words words, Button other, Runnable toggle, Consumer<Port> use) {
    this.words = words;
    this.use = use;
    getStyleClass().add("link-rows");
    meters.getStyleClass().add("link-rows");
    listen.setId("measure-listen");
    listen.getStyleClass().add("large-button");
    listen.setOnAction(event -> toggle.run());
    sentence.setId("measure-heard");
    progress.managedProperty().bind(progress.visibleProperty());
    FlowPane first = new FlowPane(12, 6, other, listen, progress);
    getChildren().addAll(first, sentence, meters);
    show(Listening.NEVER, List.of());
  }

  void show(Listening listening, List<String> used) {
    listen.setText(words.text(listening.going() ? "measure.stop-listening" : "measure.listen"));
    progress.setVisible(listening.going());
    progress.setProgress(listening.done());
    progress.setAccessibleText(listening.sentence());
    sentence.setText(listening.sentence());
    if (!shown.equals(listening.heard())) {
      shown = listening.heard();
      meters.getChildren().setAll(shown.stream().map(this::button).toList());
    }
    used(used);
  }

  /** A meter that is one of the session's already cannot be taken twice. */
  void used(List<String> used) {
    meters
        .getChildren()
        .forEach(button -> button.setDisable(used.contains(String.valueOf(button.getUserData()))));
  }

  private Button button(Port meter) {
    Button button =
        new Button(words.text("measure.use-heard", meter.description(), meter.address()));
    button.setUserData(meter.address());
    button.getStyleClass().addAll("large-button", "heard-meter");
    button.setOnAction(event -> use.accept(meter));
    return button;
  }
}
