package datumpeg.desktop.control;

import javafx.scene.control.Label;

/** Labels that wrap and never hide their text behind dots. */
public final class Labels {
  private Labels() {}

  public static Label wrapping(String text, String styleClass) {
    Label label = new Label(text);
    label.getStyleClass().add(styleClass);
    label.setWrapText(true);
    label.setMinHeight(javafx.scene.layout.Region.USE_PREF_SIZE);
    return label;
  }

  /** A label that takes no place while its text is empty. */
  public static Label vanishing(String styleClass) {
    Label label = wrapping("", styleClass);
    label.managedProperty().bind(label.textProperty().isNotEmpty());
    label.visibleProperty().bind(label.managedProperty());
    return label;
  }
}
