package datumpeg.desktop.form;

import datumpeg.desktop.control.Choice;
import datumpeg.desktop.control.ChoiceName;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.form.FormPage.Row;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.css.PseudoClass;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** One field: its name above it, how it is read and what is wrong with it below. */
final class FieldBox extends VBox {
  private final FormField field;
  private final Words words;
  private final Consumer<String> typed;
  private final @Nullable ComboBox<Choice> box;
  private final Control input;
  private final Label told = Labels.vanishing("field-told");
  private final Label wrong = Labels.vanishing("field-wrong");
  private final Button anew = new Button();
  private List<String> offered = List.of();
  private boolean showing;

  /** A field before its first row. */
  FieldBox(FormField field, Words words, FormActs acts) {
    this.field = field;
    this.words = words;
    this.typed = text -> acts.edits().type(field, text);
    this.box = isOneOf(field) ? comboBox() : null;
    this.input = box == null ? otherInput() : box;
    getStyleClass().add("form-field");
    input.setId("form-" + field.path().replaceAll("[.\\[]", "-").replace("]", ""));
    input.setMaxWidth(Double.MAX_VALUE);
    input
        .focusedProperty()
        .addListener((property, before, now) -> acts.focused().accept(now ? field.path() : ""));
    wrong.setId(input.getId() + "-wrong");
    told.setId(input.getId() + "-told");
    anew.setText(words.text("form.begin-anew"));
    anew.setOnAction(event -> acts.edits().remove(field.path()));
  }

  private static boolean isOneOf(FormField field) {
    return !field.choices().isEmpty() && field.shape() != FormField.Shape.SOME;
  }

  private Control otherInput() {
    return field.shape() == FormField.Shape.SOME
        ? new CheckMenu(
            new ChoiceWords(words).of(field), words.text("form.choice.none-of-them"), this::take)
        : textField();
  }

  private void take(String text) {
    if (!showing) {
      typed.accept(text);
    }
  }

  private TextField textField() {
    TextField text = new TextField();
    text.textProperty().addListener((property, before, now) -> take(now));
    return text;
  }

  private ComboBox<Choice> comboBox() {
    ComboBox<Choice> made = new ComboBox<>();
    made.setConverter(new ChoiceName());
    made.valueProperty()
        .addListener(
            (property, before, now) -> {
              if (now != null) {
                take(now.id());
              }
            });
    return made;
  }

  /** What can be chosen grows with the stages that the user adds. */
  private void offer(ComboBox<Choice> choosing, FormField now) {
    if (now.choices().equals(offered)) {
      return;
    }
    offered = now.choices();
    List<Choice> choices = new ArrayList<>(new ChoiceWords(words).of(now));
    if (!field.required()) {
      choices.add(0, new Choice("", words.text("form.choice.none")));
    }
    @Nullable Choice chosen = choosing.getValue();
    choosing.getItems().setAll(choices);
    if (chosen != null) {
      select(choosing, chosen.id());
    }
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
    if (box != null) {
      offer(box, row.field());
    }
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
    if (box != null) {
      select(box, value);
    } else if (input instanceof TextField text) {
      text.setText(value);
    } else if (input instanceof CheckMenu menu) {
      menu.choose(value);
    }
  }

  private static void select(ComboBox<Choice> choosing, String id) {
    for (Choice choice : choosing.getItems()) {
      if (choice.id().equals(id)) {
        choosing.getSelectionModel().select(choice);
        return;
      }
    }
    choosing.getSelectionModel().clearSelection();
  }

  @Override
  public void requestFocus() {
    input.requestFocus();
  }
}
