package datumpeg.desktop.form;

import datumpeg.desktop.control.Choice;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javafx.scene.control.CheckMenuItem;
import javafx.scene.control.MenuButton;

/** Some of a list of choices: a button that says which, and opens the list to tick. */
final class CheckMenu extends MenuButton {
  private final List<Choice> choices;
  private final String none;

  /**
   * Nothing is chosen.
   *
   * @param none what the button says then
   * @param changed is given the ids that are chosen, with commas between them
   */
  CheckMenu(List<Choice> choices, String none, Consumer<String> changed) {
    this.choices = List.copyOf(choices);
    this.none = none;
    setWrapText(true);
    for (Choice choice : choices) {
      CheckMenuItem item = new CheckMenuItem(choice.name());
      item.setOnAction(
          event -> {
            changed.accept(chosen(true));
            tell();
          });
      getItems().add(item);
    }
    tell();
  }

  /** Chooses those that a text names, with commas between them. */
  void choose(String ids) {
    List<String> wanted = List.of(ids.split(", ", -1));
    for (int i = 0; i < choices.size(); i++) {
      ((CheckMenuItem) getItems().get(i)).setSelected(wanted.contains(choices.get(i).id()));
    }
    tell();
  }

  private void tell() {
    String names = chosen(false);
    setText(names.isEmpty() ? none : names);
  }

  private String chosen(boolean asIds) {
    return choices.stream()
        .filter(choice -> ((CheckMenuItem) getItems().get(choices.indexOf(choice))).isSelected())
        .map(choice -> asIds ? choice.id() : choice.name())
        .collect(Collectors.joining(", "));
  }
}
