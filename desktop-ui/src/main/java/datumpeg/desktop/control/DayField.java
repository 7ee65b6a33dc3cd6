package datumpeg.desktop.control;

import java.time.LocalDate;
import java.util.Optional;
import javafx.scene.control.DatePicker;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** A day to choose or to leave open, under its name. */
public final class DayField extends VBox {
  private final DatePicker picker = new DatePicker();
  private boolean showing;

  /**
   * No day chosen.
   *
   * @param id of the field itself, for tests and style sheets
   * @param chosen is told when the user chooses another day, or none
   */
  public DayField(String id, String name, Runnable chosen) {
    getStyleClass().add("chooser");
    picker.setId(id);
    picker.setAccessibleText(name);
    picker
        .valueProperty()
        .addListener(
            (property, before, day) -> {
              if (!showing) {
                chosen.run();
              }
            });
    Label label = new Label(name);
    label.getStyleClass().add("chooser-name");
    label.setLabelFor(picker);
    getChildren().addAll(label, picker);
  }

  /** Brings the day to what the model says; nobody is told. */
  public void show(Optional<LocalDate> day) {
    showing = true;
    picker.setValue(day.orElse(null));
    showing = false;
  }

  /** The day that is chosen. */
  public Optional<LocalDate> day() {
    return Optional.ofNullable(picker.getValue());
  }
}
