package datumpeg.desktop.control;

import java.util.List;
import javafx.collections.ObservableList;

/** Brings a shown list to a new content, touching only what differs: selection and focus stay. */
public final class SteadyList {
  private SteadyList() {}

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
