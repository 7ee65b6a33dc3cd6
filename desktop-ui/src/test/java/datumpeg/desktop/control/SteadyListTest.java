package datumpeg.desktop.control;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import javafx.collections.FXCollections;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import org.junit.jupiter.api.Test;

class SteadyListTest {
  private final ObservableList<String> shown = FXCollections.observableArrayList("a", "b", "c");
  private final List<String> touched = new ArrayList<>();

  SteadyListTest() {
    shown.addListener(
        (ListChangeListener<String>)
            change -> {
              while (change.next()) {
                touched.addAll(change.getAddedSubList());
                touched.addAll(change.getRemoved());
              }
            });
  }

  @Test
  void equalContentTouchesNothing() {
    SteadyList.bring(shown, List.of("a", "b", "c"));
    assertEquals(List.of(), touched);
  }

  @Test
  void onlyWhatDiffersIsTouched() {
    SteadyList.bring(shown, List.of("a", "x", "c", "d"));
    assertEquals(List.of("a", "x", "c", "d"), shown);
    assertEquals(List.of("x", "b", "d"), touched);
  }

  @Test
  void shorterContentDropsTheRest() {
    SteadyList.bring(shown, List.of("a"));
    assertEquals(List.of("a"), shown);
    SteadyList.bring(shown, List.of());
    assertEquals(List.of(), shown);
  }
}
