package datumpeg.desktop.findings;

import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.StandingMark;
import datumpeg.desktop.findings.FindingsPage.CauseCard;
import datumpeg.desktop.text.Words;
import java.util.List;
import javafx.application.Platform;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** One cause with its remedy, which can be ticked when it is done and asks what was moved. */
final class CauseBox extends HBox {

  /** Hears what was moved, and why. */
  interface Done {
    void moved(String thing, String why);
  }

  private final Words words;

  CauseBox(CauseCard cause, Words words, Done done) {
    this.words = words;
    Label sentence = Labels.wrapping(cause.sentence(), "cause-sentence");
    Label action = Labels.wrapping(cause.action(), "cause-action");
    VBox texts = new VBox(sentence, action);
    if (!cause.symptoms().isEmpty()) {
      texts.getChildren().add(Labels.wrapping(cause.symptoms(), "cause-symptoms"));
    }
    texts.getChildren().add(tick(cause, texts, done));
    HBox.setHgrow(texts, Priority.ALWAYS);
    getStyleClass().add("cause-card");
    Label number = new Label(Integer.toString(cause.number()));
    number.getStyleClass().add("cause-number");
    number.setMinSize(USE_PREF_SIZE, USE_PREF_SIZE);
    getChildren().addAll(new VBox(new StandingMark(cause.standing()), number), texts);
  }

  private CheckBox tick(CauseCard cause, VBox texts, Done done) {
    CheckBox tick = new CheckBox(words.text("done.tick"));
    tick.getStyleClass().add("cause-tick");
    tick.setAccessibleText(words.text("done.tick") + ": " + cause.sentence());
    tick.setOnAction(
        event -> {
          if (tick.isSelected()) {
            texts.getChildren().add(asked(cause, done));
          } else {
            texts.getChildren().remove(texts.getChildren().size() - 1);
          }
        });
    return tick;
  }

  /** Made when it is ticked: most causes never are. */
  private FlowPane asked(CauseCard cause, Done done) {
    ComboBox<String> thing = new ComboBox<>();
    TextField why = new TextField();
    thing.setEditable(true);
    thing.getStyleClass().add("moved-thing");
    thing.getItems().setAll(cause.things());
    thing.getEditor().setText(cause.things().isEmpty() ? "" : cause.things().get(0));
    thing.getEditor().setPromptText(words.text("done.thing-prompt"));
    thing.setAccessibleText(words.text("done.thing"));
    why.setText(cause.action());
    why.setAccessibleText(words.text("done.why"));
    why.setPrefColumnCount(22);
    Button store = new Button(words.text("done.store"));
    store.getStyleClass().add("moved-store");
    store.setOnAction(
        event -> done.moved(thing.getEditor().getText().strip(), why.getText().strip()));
    FlowPane asked =
        new FlowPane(
            8,
            4,
            new Label(words.text("done.thing")),
            thing,
            new Label(words.text("done.why")),
            why,
            store);
    asked.setMinWidth(0); // beside a drawing, in large letters, the card is narrow
    for (Region field : List.of(thing, why, store)) {
      field.setMinWidth(0);
      field.maxWidthProperty().bind(asked.widthProperty());
    }
    store.setWrapText(true);
    Platform.runLater(thing::requestFocus); // once it stands in its place
    return asked;
  }
}
