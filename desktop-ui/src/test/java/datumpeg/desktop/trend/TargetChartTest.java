package datumpeg.desktop.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.app.HeadlessToolkit;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import org.junit.jupiter.api.Test;

/** Twenty rounds of one target: more than can be read side by side. */
class TargetChartTest {
  private static final int ROUNDS = 20;

  private final List<String> read = new ArrayList<>();
  private final TargetChart chart;

  TargetChartTest() {
    HeadlessToolkit.start();
    chart =
        HeadlessToolkit.on(
            () -> {
              TargetChart made = new TargetChart(Words.of(Locale.ROOT), page());
              made.onRead(read::add);
              new Scene(made, 900, 500);
              made.resize(900, 500);
              made.show(page());
              made.layout();
              return made;
            });
  }

  private static TrendPage page() {
    List<TrendPoint> points =
        IntStream.rangeClosed(1, ROUNDS)
            .mapToObj(
                round ->
                    new TrendPoint(
                        "round " + round,
                        round,
                        2,
                        "+" + round + " mm",
                        OptionalDouble.of(-10),
                        OptionalDouble.of(10),
                        Standing.CONFORMING))
            .toList();
    return new TrendPage(
        "Job", List.of(), "check", List.of("A1"), "A1", points, "mm", "", List.of(), "spoken");
  }

  @Test
  void keysReadOutPointByPoint() {
    press(KeyCode.HOME);
    assertEquals("round 1: +1 mm, conforming", read.get(read.size() - 1));
    press(KeyCode.RIGHT);
    assertEquals("round 2: +2 mm, conforming", read.get(read.size() - 1));
    assertTrue(
        HeadlessToolkit.on(chart::getAccessibleText).startsWith("round 2: +2 mm, conforming"));
  }

  @Test
  void pointerReadsOutWhatItIsAt() {
    HeadlessToolkit.run(
        () ->
            chart.fireEvent(
                new MouseEvent(
                    MouseEvent.MOUSE_MOVED,
                    890,
                    200,
                    890,
                    200,
                    MouseButton.NONE,
                    0,
                    false,
                    false,
                    false,
                    false,
                    false,
                    false,
                    false,
                    false,
                    false,
                    false,
                    null)));
    assertEquals("round 20: +20 mm, conforming", read.get(read.size() - 1));
  }

  @Test
  void zoomedPictureHoldsOnlyWhatIsInView() {
    String all = HeadlessToolkit.on(chart::svg);
    assertTrue(all.contains("round 1<") && all.contains("round 20<"), all);
    for (int i = 0; i < 6; i++) {
      press(KeyCode.PLUS);
    }
    press(KeyCode.END);
    String some = HeadlessToolkit.on(chart::svg);
    assertFalse(some.contains("round 1<"), some);
    assertTrue(some.contains("round 20<"), some);
    press(KeyCode.DIGIT0);
    assertEquals(all, HeadlessToolkit.on(chart::svg));
  }

  private void press(KeyCode key) {
    HeadlessToolkit.run(
        () ->
            chart.fireEvent(
                new KeyEvent(KeyEvent.KEY_PRESSED, "", "", key, false, false, false, false)));
  }
}
