package datumpeg.desktop.control;

import javafx.application.Platform;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.skin.ComboBoxListViewSkin;

/**
 * Lets a list to choose from become narrower again: the toolkit's wants to be at least as wide as
 * it is, so that after large letters it would stay wide until the window is opened anew.
 */
public final class ChoiceWidth {
  private ChoiceWidth() {}

  /**
   * Measures a list anew when letters become smaller.
   *
   * @param beside has the letters of the list
   */
  public static void follow(ComboBox<?> list, Label beside) {
    beside
        .fontProperty()
        .addListener(
            (property, before, now) -> {
              if (now.getSize() < before.getSize()) {
                Platform.runLater(() -> anew(list)); // not amid the work of the style sheets
              }
            });
  }

  private static <T> void anew(ComboBox<T> list) {
    list.hide();
    list.setSkin(new ComboBoxListViewSkin<>(list));
    list.resize(0, list.getHeight());
    list.requestLayout();
  }
}
