package datumpeg.desktop.measure;

import datumpeg.desktop.control.Labels;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;

/** On other screens: how the session that runs stands, and the way back to it. */
public final class MeasuringBar extends HBox {
  /**
   * @param back leads to measuring
   */
  public MeasuringBar(MeasureViewModel model, Runnable back) {
    getStyleClass().add("measuring-bar");
    Label sentence = Labels.wrapping("", "measuring-elsewhere");
    sentence.setId("measuring-elsewhere");
    sentence.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(sentence, Priority.ALWAYS);
    Button button = new Button(model.words().text("measure.back-to"));
    button.setId("measuring-back");
    button.setMinWidth(USE_PREF_SIZE);
    button.getStyleClass().add("large-button");
    button.setOnAction(event -> back.run());
    model
        .page()
        .addListener((property, before, page) -> show(List.of(sentence, button), page.elsewhere()));
    managedProperty().bind(visibleProperty());
    setVisible(false);
    sentence
        .textProperty()
        .bind(Bindings.createStringBinding(() -> model.page().get().elsewhere(), model.page()));
  }

  private void show(List<Node> parts, String text) {
    boolean shown = !text.isEmpty();
    if (shown != isVisible()) {
      getChildren().setAll(shown ? parts : List.of());
      setVisible(shown);
    }
  }
}
