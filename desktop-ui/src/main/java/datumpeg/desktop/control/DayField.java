package datumpeg.desktop.control;

import java.time.LocalDate;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.scene.control.DatePicker;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/**
 * A day to choose, to type as 2026-03-02 or as the country writes it, or to leave open, under its
 * name. What is typed and is no day is said; the day that was chosen before stays.
 */
public final class DayField extends VBox {
  private final DatePicker picker = new DatePicker();
  private final Label wrong = Labels.vanishing("field-wrong");
  private boolean showing;

  /**
   * No day chosen.
   *
   * @param id of the field itself, for tests and style sheets
   * @param notADay what is said of a text that is no day
   * @param chosen is told when the user chooses another day, or none
   */
  public DayField(String id, String name, UnaryOperator<String> notADay, Runnable chosen) {
    getStyleClass().add("chooser");
    picker.setId(id);
    picker.setAccessibleText(name);
    wrong.setId(id + "-wrong");
    picker.setConverter(
        new TypedDay(text -> wrong.setText(text.isEmpty() ? "" : notADay.apply(text))));
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
    getChildren().addAll(label, picker, wrong);
  }

  /** Brings the day to what the model says; nobody is told. */
  public void show(Optional<LocalDate> day) {
    showing = true;
    if (!day.equals(day())) {
      wrong.setText("");
      picker.setValue(day.orElse(null));
    }
    showing = false;
  }

  /** The day that is chosen. */
  public Optional<LocalDate> day() {
    return Optional.ofNullable(picker.getValue());
  }
}
