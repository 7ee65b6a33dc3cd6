package datumpeg.desktop.control;

import java.util.List;
import javafx.collections.ObservableList;
import javafx.scene.control.ComboBox;
import org.jspecify.annotations.Nullable;

/** Brings a shown list to a new content, touching only what differs: selection and focus stay. */
public final class SteadyList {
  private SteadyList() {}

  /**
   * Brings a list to choose from to a new content and choice. Where the content differs the choice
   * is taken off first: the toolkit goes on showing what stands in the place of the old one.
   */
  public static <T> void bring(ComboBox<T> box, List<? extends T> wanted, @Nullable T chosen) {
    if (!box.getItems().equals(wanted)) {
      box.setValue(null);
      bring(box.getItems(), wanted);
    }
    box.setValue(chosen);
  }

  public static <T> void bring(ObservableList<T> shown, List<? extends T> wanted) {
    for (int i = 0; i < Math.min(shown.size(), wanted.size()); i++) {
      if (!shown.get(i).equals(wanted.get(i))) {
        shown.set(i, wanted.get(i));
      }
    }
    if (shown.size() > wanted.size()) {
      shown.remove(wanted.size(), shown.size());
    } else {
      shown.addAll(List.copyOf(wanted.subList(shown.size(), wanted.size())));
    }
  }
}
