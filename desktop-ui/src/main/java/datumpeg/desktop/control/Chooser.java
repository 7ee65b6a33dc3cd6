package datumpeg.desktop.control;

import java.util.List;
import java.util.function.Consumer;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** A list to choose from, under its name. */
public final class Chooser extends VBox {
  private final ComboBox<Choice> box = new ComboBox<>();
  private final String name;
  private boolean showing;

  /**
   * An empty list.
   *
   * @param id of the list itself, for tests and style sheets
   * @param chosen is given the id of what the user chooses
   */
  public Chooser(String id, String name, Consumer<String> chosen) {
    this.name = name;
    getStyleClass().add("chooser");
    Label label = new Label(name);
    label.getStyleClass().add("chooser-name");
    label.setLabelFor(box);
    box.setId(id);
    box.setAccessibleText(name);
    box.setVisibleRowCount(12);
    box.setConverter(new ChoiceName());
    box.setMaxWidth(Double.MAX_VALUE);
    box.valueProperty()
        .addListener(
            (property, before, choice) -> {
              if (!showing && choice != null) {
                chosen.accept(choice.id());
              }
            });
    ChoiceWidth.follow(box, label);
    getChildren().addAll(label, box);
  }

  /** Brings list and choice to what the model says; nobody is told. */
  public void show(List<Choice> choices, String chosen) {
    showing = true;
    SteadyList.bring(
        box,
        choices,
        choices.stream().filter(choice -> choice.id().equals(chosen)).findFirst().orElse(null));
    box.setDisable(choices.isEmpty());
    showing = false;
  }

  /** What stands above the list. */
  String name() {
    return name;
  }

  @Override
  public void requestFocus() {
    box.requestFocus();
  }
}
