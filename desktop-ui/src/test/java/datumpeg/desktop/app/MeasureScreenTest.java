package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.record.entry.ReadingEntry;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What a meter sends, and what is chosen, becomes readings of the record. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
final class MeasureScreenTest extends MeasuringOnScreen {
  MeasureScreenTest(@TempDir Path record) throws IOException {
    super(record);
  }

  @Test
  void bytesOfAMeterBecomeReadingsOfTheRecord() throws IOException {
    begin();
    assertEquals("18.000 m", text("expected"));
    meterSends("18.0035 m\r\n");
    untilBig("18.0035 m");
    meterSends("BATT 87%\r\n");
    untilText("links", "serial:" + meter.getSlaveName());
    HeadlessToolkit.until("battery", () -> text("links").contains("BATT 87%"));
    meterSends("19.126 m\r\n");
    untilText("question", "Held: 19.126 m");
    fire("act-again");
    HeadlessToolkit.until("nothing is held", () -> text("question").isEmpty());
    meterSends("20.126 m\r\n");
    untilBig("20.126 m");
    assertEquals(
        List.of("18.0035", "20.126"), recorded().stream().map(ReadingEntry::value).toList());
    assertEquals("31382e30303335206d", recorded().get(0).raw());
    fire("act-bytes");
    HeadlessToolkit.until(
        "the raw bytes are shown",
        () ->
            stage.getScene().lookup("#bytes") instanceof javafx.scene.control.TextArea bytes
                && bytes.isVisible()
                && bytes.getText().contains("32 30 2e 31 32 36 20 6d"));
    meter.close();
    untilText("measure-trouble", "The serial port");
    assertTrue(text("links").contains("LOST, tried again"), text("links"));
    key(stage.getScene().getRoot(), "9.002");
    press(stage.getScene().getRoot(), KeyCode.ENTER);
    untilBig("9.002 m");
    assertEquals(3, recorded().size(), "typing goes on without the meter");
  }

  @Test
  void theListOfTargetsIsReachedByKeyAndByTouch() {
    begin();
    key(stage.getScene().getRoot(), "g");
    ListView<?> targets = node(ListView.class, "targets");
    HeadlessToolkit.until("they are found", () -> targets.getItems().size() > 10);
    HeadlessToolkit.until("the keys go to it", targets::isFocused);
    assertFits();
    HeadlessToolkit.run(() -> targets.getSelectionModel().clearAndSelect(2));
    press(targets, KeyCode.ENTER);
    untilText("instruction", "Measure from slab corner A1 to slab corner B1");
    key(stage.getScene().getRoot(), "g");
    HeadlessToolkit.until("they are shown", targets::isVisible);
    HeadlessToolkit.until("its cells are there", () -> !cells(targets).isEmpty());
    double height =
        HeadlessToolkit.atRest(
            stage.getScene(),
            () -> {
              // While the list still moves, a cell gets another target at any moment.
              Node cell = cells(targets).get(0);
              double cellHeight = place(cell).getHeight();
              cell.fireEvent(click());
              return cellHeight;
            });
    assertTrue(height >= LEAST_BUTTON, "a cell is " + height + " high");
    untilText("instruction", "Measure from slab corner B1 to slab corner B4");
  }

  @Test
  void closingTheWindowLosesNothing() {
    begin();
    meterSends("18.0035 m\r\n");
    untilBig("18.0035 m");
    HeadlessToolkit.run(stage::close);
    window.close();
    assertEquals(1, recorded().size());
  }

  private static MouseEvent click() {
    return new MouseEvent(
        MouseEvent.MOUSE_CLICKED,
        1,
        1,
        1,
        1,
        MouseButton.PRIMARY,
        1,
        false,
        false,
        false,
        false,
        true,
        false,
        false,
        false,
        false,
        true,
        null);
  }

  private static List<Node> cells(ListView<?> targets) {
    return HeadlessToolkit.find(
        targets,
        node ->
            node instanceof ListCell<?> cell
                && cell.getItem() != null
                && String.valueOf(cell.getAccessibleText())
                    .startsWith("Measure from slab corner B1"));
  }
}
