package datumpeg.desktop.measure;

import datumpeg.bridge.collect.Wanted;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.StandingMark;
import datumpeg.desktop.control.SteadyList;
import datumpeg.desktop.measure.MeasurePage.TargetChoice;
import datumpeg.desktop.measure.MeasurePage.TargetChoices;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** All targets of the stage with how they stand; a touch, or Enter, goes to one. */
final class TargetList extends VBox {
  private final Consumer<Wanted> goTo;
  private final Label heading = Labels.wrapping("", "subheading");
  private final ListView<TargetChoice> list = new ListView<>();

  /**
   * @param goTo asks for the target chosen
   */
  TargetList(Words words, Consumer<Wanted> goTo) {
    this.goTo = goTo;
    getStyleClass().add("target-list");
    list.setId("targets");
    list.setAccessibleText(words.text("measure.targets"));
    list.setCellFactory(view -> new TargetCell());
    VBox.setVgrow(list, Priority.ALWAYS);
    getChildren().addAll(heading, list);
    managedProperty().bind(visibleProperty());
    setVisible(false);
  }

  void show(Optional<TargetChoices> choices) {
    boolean opens = choices.isPresent() && !isVisible();
    if (opens) {
      list.getSelectionModel().clearSelection();
    }
    setVisible(choices.isPresent());
    choices.ifPresent(this::show);
  }

  private void show(TargetChoices choices) {
    heading.setText(choices.heading());
    SteadyList.bring(list.getItems(), choices.choices());
    if (list.getSelectionModel().isEmpty() && !choices.choices().isEmpty()) {
      int open = firstOpen(choices);
      list.getSelectionModel().clearAndSelect(open);
      list.requestFocus();
      // Its place is known only once it is laid out; the one before it shows that there is more.
      Platform.runLater(() -> list.scrollTo(Math.max(0, open - 1)));
    }
  }

  private static int firstOpen(TargetChoices choices) {
    for (int i = 0; i < choices.choices().size(); i++) {
      if (choices.choices().get(i).standing() == Standing.NOT_MEASURED) {
        return i;
      }
    }
    return 0;
  }

  /** Goes to the target chosen; false if the list is not shown. */
  boolean choose() {
    TargetChoice chosen = list.getSelectionModel().getSelectedItem();
    if (!isVisible()) {
      return false;
    }
    if (chosen != null) {
      goTo.accept(chosen.wanted());
    }
    return true;
  }

  /** A target: its shape, what to do, how it stands in words. */
  private final class TargetCell extends ListCell<TargetChoice> {
    TargetCell() {
      getStyleClass().add("target-cell");
      setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
      setPrefWidth(0); // as wide as the list, whatever it holds
      setOnMouseClicked(
          event -> {
            TargetChoice choice = getItem();
            if (choice != null) {
              goTo.accept(choice.wanted());
            }
          });
    }

    @Override
    protected void updateItem(TargetChoice choice, boolean empty) {
      super.updateItem(choice, empty);
      if (empty || choice == null) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      Label doing = Labels.wrapping(choice.instruction(), "target-doing");
      Label how = new Label(choice.how());
      how.setMinWidth(USE_PREF_SIZE);
      HBox.setHgrow(doing, Priority.ALWAYS);
      doing.setMaxWidth(Double.MAX_VALUE);
      HBox line = new HBox(new StandingMark(choice.standing()), doing, how);
      line.getStyleClass().add("target-line");
      line.prefWidthProperty()
          .bind(
              Bindings.createDoubleBinding(
                  () -> getWidth() - snappedLeftInset() - snappedRightInset(),
                  widthProperty(),
                  insetsProperty()));
      setGraphic(line);
      setAccessibleText(choice.instruction() + ": " + choice.how());
    }
  }
}
