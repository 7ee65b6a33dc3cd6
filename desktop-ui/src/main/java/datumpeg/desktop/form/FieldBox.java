package datumpeg.desktop.form;

import datumpeg.desktop.control.Choice;
import datumpeg.desktop.control.ChoiceName;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.form.FormPage.Row;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.css.PseudoClass;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;

/** One field: its name above it, how it is read and what is wrong with it below. */
final class FieldBox extends VBox {
  private final FormField field;
  private final Words words;
  private final Consumer<String> typed;
  private final Control input;
  private final Label told = Labels.vanishing("field-told");
  private final Label wrong = Labels.vanishing("field-wrong");
  private final Button anew = new Button();
  private boolean showing;

  /**
   * A field before its first row.
   *
   * @param type is given what the user types
   * @param remove is given the path of an entry that the user wants to begin anew
   * @param focus is told the path of the field when it takes the keys
   */
  FieldBox(
      FormField field,
      Words words,
      BiConsumer<FormField, String> type,
      Consumer<String> remove,
      Consumer<String> focus) {
    this.field = field;
    this.words = words;
    this.typed = text -> type.accept(field, text);
    this.input = field.choices().isEmpty() ? textField() : comboBox();
    getStyleClass().add("form-field");
    input.setId("form-" + field.path().replace('.', '-'));
    input.setMaxWidth(Double.MAX_VALUE);
    input
        .focusedProperty()
        .addListener((property, before, now) -> focus.accept(now ? field.path() : ""));
    wrong.setId(input.getId() + "-wrong");
    told.setId(input.getId() + "-told");
    anew.setText(words.text("form.begin-anew"));
    anew.setOnAction(event -> remove.accept(field.path()));
  }

  private TextField textField() {
    TextField text = new TextField();
    text.textProperty()
        .addListener(
            (property, before, now) -> {
              if (!showing) {
                typed.accept(now);
              }
            });
    return text;
  }

  private ComboBox<Choice> comboBox() {
    ComboBox<Choice> box = new ComboBox<>();
    List<Choice> choices = new ArrayList<>();
    if (!field.required()) {
      choices.add(new Choice("", words.text("form.choice.none")));
    }
    for (String word : field.choices()) {
      String key = "form.choice." + word.toLowerCase(Locale.ROOT).replace(' ', '-');
      choices.add(new Choice(word, words.text(key)));
    }
    box.getItems().setAll(choices);
    box.setConverter(new ChoiceName());
    box.valueProperty()
        .addListener(
            (property, before, now) -> {
              if (!showing && now != null) {
                typed.accept(now.id());
              }
            });
    return box;
  }

  /**
   * Brings the field to its row.
   *
   * @param fill whether its text is shown too; else what is being typed stays
   */
  void show(Row row, boolean fill) {
    if (getChildren().isEmpty()) {
      Label name = Labels.wrapping(row.label(), "chooser-name");
      name.setLabelFor(input);
      getChildren().addAll(name, input, told, wrong);
    }
    showing = true;
    if (fill) {
      fill(row.text());
    }
    showing = false;
    told.setText(row.fixed().isEmpty() ? row.told() : row.fixed());
    wrong.setText(row.wrong());
    input.setAccessibleText(row.label());
    input.setAccessibleHelp((row.example() + " " + told.getText() + " " + row.wrong()).strip());
    boolean fixed = !row.fixed().isEmpty();
    getChildren().remove(anew);
    if (fixed && row.field().path().startsWith("tolerances.")) {
      getChildren().add(anew);
    }
    anew.setAccessibleText(anew.getText() + ": " + row.label());
    if (input instanceof TextField text) {
      text.setPromptText(row.example());
      text.setEditable(!fixed);
    }
    input.pseudoClassStateChanged(PseudoClass.getPseudoClass("wrong"), !row.wrong().isEmpty());
  }

  private void fill(String value) {
    if (input instanceof TextField text) {
      text.setText(value);
    } else if (input instanceof ComboBox<?> box) {
      for (int i = 0; i < box.getItems().size(); i++) {
        if (box.getItems().get(i) instanceof Choice choice && choice.id().equals(value)) {
          box.getSelectionModel().select(i);
          return;
        }
      }
      box.getSelectionModel().clearSelection();
    }
  }

  @Override
  public void requestFocus() {
    input.requestFocus();
  }
}
