package datumpeg.desktop.control;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.desktop.app.HeadlessToolkit;
import java.util.List;
import java.util.stream.IntStream;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class InStepsTest {
  private final ObservableList<Integer> shown = FXCollections.observableArrayList();

  @BeforeAll
  static void start() {
    HeadlessToolkit.start();
  }

  private static List<Integer> rows(int count) {
    return IntStream.range(0, count).boxed().toList();
  }

  @Test
  void firstRowsComeAtOnceAndAllInTheEnd() {
    InSteps<Integer> steps = new InSteps<>(shown);
    int atOnce =
        HeadlessToolkit.on(
            () -> {
              steps.bring(rows(200));
              return shown.size();
            });
    assertEquals(3, atOnce);
    HeadlessToolkit.until("all rows", () -> shown.equals(rows(200)));
  }

  @Test
  void newerContentTakesThePlaceOfWhatIsStillToCome() {
    InSteps<Integer> steps = new InSteps<>(shown);
    HeadlessToolkit.run(
        () -> {
          steps.bring(rows(200));
          steps.bring(List.of(7, 8));
        });
    HeadlessToolkit.until("the newer rows", () -> shown.equals(List.of(7, 8)));
  }

  @Test
  void emptyContentEmptiesTheList() {
    InSteps<Integer> steps = new InSteps<>(shown);
    HeadlessToolkit.run(
        () -> {
          steps.bring(rows(2));
          steps.bring(List.of());
        });
    assertEquals(List.of(), HeadlessToolkit.on(() -> List.copyOf(shown)));
  }
}
