package datumpeg.desktop.form;

import datumpeg.analysis.measuring.Stage;
import datumpeg.desktop.text.Words;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** What can be added to a job any number of times: openings, meters, stages. */
final class AddingLine extends VBox {
  private final Words words;

  AddingLine(Words words, FormEdits edits) {
    this.words = words;
    getStyleClass().add("changes");
    MenuButton usual = new MenuButton(words.text("form.add-to-stage"));
    usual.setId("form-add-to-stage");
    for (Stage stage : Stage.STANDARD) {
      MenuItem item = new MenuItem(words.stage(stage.id()));
      item.setOnAction(event -> edits.addStage(stage.id()));
      usual.getItems().add(item);
    }
    Button opening = button("form.add-opening");
    opening.setOnAction(event -> edits.addOpening());
    FlowPane stages =
        named(
            "stage",
            "form.stage-prompt",
            "form.stage-name",
            button("form.add-stage"),
            edits::addStage);
    stages.getChildren().add(usual);
    getChildren()
        .addAll(
            line(opening),
            named(
                "meter",
                "form.meter-prompt",
                "form.meter-name",
                button("form.add-meter"),
                edits::addMeter),
            stages);
  }

  private static FlowPane line(Node... nodes) {
    FlowPane line = new FlowPane(nodes);
    line.getStyleClass().add("chart-buttons");
    return line;
  }

  private Button button(String key) {
    Button button = new Button(words.text(key));
    button.setId(key.replace('.', '-'));
    button.setMinWidth(USE_PREF_SIZE);
    return button;
  }

  /** A field for a name, and the button that adds what is called so. */
  private FlowPane named(
      String what, String prompt, String called, Button button, Consumer<String> add) {
    TextField name = new TextField();
    name.setId("form-" + what + "-name");
    name.setPromptText(words.text(prompt));
    name.setAccessibleText(words.text(called));
    name.setPrefColumnCount(9);
    Runnable act =
        () -> {
          add.accept(name.getText());
          name.clear();
        };
    button.setOnAction(event -> act.run());
    name.setOnAction(event -> act.run());
    return line(name, button);
  }
}
