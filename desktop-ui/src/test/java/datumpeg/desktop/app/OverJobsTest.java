package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.source.InventedCrews;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javafx.event.EventType;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.DatePicker;
import javafx.scene.control.Labeled;
import javafx.scene.control.ToggleButton;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The trend over jobs and the comparison, in the window. */
class OverJobsTest {
  private Settings left = Settings.usual();
  private Stage stage;
  private DesktopWindow window;

  @BeforeEach
  void open() {
    HeadlessToolkit.start();
    stage = HeadlessToolkit.on(Stage::new);
    window =
        HeadlessToolkit.on(
            () ->
                new DesktopWindow(
                    Words.of(Locale.ROOT),
                    ZoneOffset.UTC,
                    new SettingsFile.Loaded(left, ""),
                    new NoSessions(),
                    new NoRows(),
                    new NoDesk(),
                    new NoShelf(),
                    settings -> left = settings,
                    job -> {}));
    HeadlessToolkit.run(() -> window.openOn(stage));
  }

  @AfterEach
  void close() {
    HeadlessToolkit.run(() -> stage.close());
  }

  private void show(Screen screen, RecordState state) {
    HeadlessToolkit.run(
        () -> {
          window.window().screen().set(screen);
          window.show(state);
        });
  }

  private void overJobs() {
    HeadlessToolkit.run(() -> ((ToggleButton) lookup("trend-over-jobs")).fire());
  }

  private Node lookup(String id) {
    return HeadlessToolkit.on(() -> stage.getScene().lookup("#" + id));
  }

  private void press(Node node, KeyCode key) {
    HeadlessToolkit.run(
        () ->
            node.fireEvent(
                new KeyEvent(KeyEvent.KEY_PRESSED, "", "", key, false, false, false, false)));
  }

  private void awaitText(String id, String beginning) {
    HeadlessToolkit.until(
        id + " says " + beginning,
        () -> {
          Node node = stage.getScene().lookup("#" + id);
          return node != null && String.valueOf(node.getAccessibleText()).contains(beginning);
        });
  }

  @Test
  void chartIsDrawnToldAndReadOutByKeys() {
    show(Screen.TREND, InventedCrews.withAnOddJob(24));
    overJobs();
    awaitText("jobs-points", "control limits");
    Node chart = lookup("jobs-points");
    WritableImage picture = HeadlessToolkit.picture(stage.getScene());
    int dark =
        HeadlessToolkit.darkPixels(
            picture, HeadlessToolkit.on(() -> chart.localToScene(chart.getBoundsInLocal())));
    assertTrue(dark > 1500, "the chart shows " + dark + " dark pixels");
    press(chart, KeyCode.RIGHT);
    press(chart, KeyCode.RIGHT);
    Labeled reading = (Labeled) lookup("jobs-reading");
    assertTrue(reading.getText().startsWith("Point 2: job-0 A2/a"), reading.getText());
    assertTrue(HeadlessToolkit.on(chart::getAccessibleText).startsWith("Point 2: job-0"));
    press(chart, KeyCode.END);
    assertTrue(reading.getText().startsWith("Point 48: job-23"), reading.getText());
    press(chart, KeyCode.PLUS);
    WritableImage nearer = HeadlessToolkit.picture(stage.getScene());
    assertNotEquals(pixels(picture), pixels(nearer), "zooming shows something else");
  }

  private static int pixels(WritableImage picture) {
    int hash = 17;
    for (int y = 0; y < picture.getHeight(); y += 3) {
      for (int x = 0; x < picture.getWidth(); x += 3) {
        hash = 31 * hash + picture.getPixelReader().getArgb(x, y);
      }
    }
    return hash;
  }

  @Test
  void emptyChartIsASentenceAndNoDrawing() {
    show(Screen.TREND, new RecordState("site.db", true, "", Optional.empty(), List.of()));
    overJobs();
    HeadlessToolkit.picture(stage.getScene());
    assertFalse(HeadlessToolkit.on(() -> lookup("jobs-points").isVisible()));
    List<Node> sentences =
        HeadlessToolkit.on(
            () ->
                HeadlessToolkit.find(
                    stage.getScene().getRoot(), node -> node.getStyleClass().contains("sentence")));
    assertTrue(
        sentences.stream()
            .anyMatch(
                n -> n instanceof Labeled l && l.getText().startsWith("No job of the record")));
  }

  @Test
  void comparisonTellsItsStripsAndFollowsTheChoice() {
    show(Screen.COMPARE, InventedCrews.state(24));
    awaitText("compare-strips", "Amber: 12 jobs, 24 outcomes.");
    WritableImage picture = HeadlessToolkit.picture(stage.getScene());
    Node strips = lookup("compare-strips");
    int dark =
        HeadlessToolkit.darkPixels(
            picture, HeadlessToolkit.on(() -> strips.localToScene(strips.getBoundsInLocal())));
    assertTrue(dark > 1000, "the strips show " + dark + " dark pixels");
    ComboBox<?> factor = (ComboBox<?>) lookup("compare-factor");
    assertEquals("Compare", HeadlessToolkit.on(factor::getAccessibleText));
    HeadlessToolkit.run(() -> factor.getSelectionModel().select(1));
    awaitText("compare-strips", "Aldermoor: 16 jobs");
  }

  private void type(String id, String text) {
    HeadlessToolkit.run(
        () -> {
          DatePicker days = (DatePicker) lookup(id);
          days.requestFocus();
          days.getEditor().setText(text);
          for (EventType<KeyEvent> type : List.of(KeyEvent.KEY_PRESSED, KeyEvent.KEY_RELEASED)) {
            days.fireEvent(new KeyEvent(type, "", "", KeyCode.ENTER, false, false, false, false));
          }
        });
  }

  @Test
  void typedDayIsReadAndWhatIsNoDayIsSaid() {
    show(Screen.COMPARE, InventedCrews.state(24));
    awaitText("compare-strips", "Amber: 12 jobs");
    type("compare-from", "last tuesday");
    Labeled wrong = (Labeled) lookup("compare-from-wrong");
    assertEquals("last tuesday is no day. Type one as 2026-03-02.", wrong.getText());
    awaitText("compare-strips", "Amber: 12 jobs");
    type("compare-from", "2030-01-01");
    assertEquals("", wrong.getText());
    HeadlessToolkit.until(
        "why nothing is drawn",
        () ->
            ((Parent) lookup("compare-sentences"))
                .getChildrenUnmodifiable().stream()
                    .anyMatch(n -> n instanceof Labeled l && l.getText().startsWith("No outcome")));
    assertFalse(HeadlessToolkit.on(() -> lookup("compare-strips").isVisible()));
    type("compare-from", "");
    awaitText("compare-strips", "Amber: 12 jobs");
  }

  private void reopen(Screen screen) {
    close();
    open();
    show(screen, InventedCrews.state(24));
  }

  private void choose(String id, String word) {
    HeadlessToolkit.run(
        () -> {
          ComboBox<?> box = (ComboBox<?>) stage.getScene().lookup("#" + id);
          for (int i = 0; i < box.getItems().size(); i++) {
            if (box.getItems().get(i).toString().endsWith("name=" + word + "]")) {
              box.getSelectionModel().select(i);
            }
          }
        });
  }

  private String chosen(String id) {
    return HeadlessToolkit.on(
        () -> String.valueOf(((ComboBox<?>) stage.getScene().lookup("#" + id)).getValue()));
  }

  @Test
  void whatWasAskedIsAskedAgainAtTheNextStart() {
    show(Screen.COMPARE, InventedCrews.state(24));
    awaitText("compare-strips", "Amber: 12 jobs");
    choose("compare-factor", "sites");
    choose("compare-crew", "Amber");
    HeadlessToolkit.run(
        () -> ((DatePicker) lookup("compare-from")).setValue(LocalDate.of(2020, 1, 1)));
    reopen(Screen.COMPARE);
    awaitText("compare-strips", "Aldermoor:");
    assertTrue(chosen("compare-crew").contains("Amber"), chosen("compare-crew"));
    assertEquals(
        LocalDate.of(2020, 1, 1),
        HeadlessToolkit.on(() -> ((DatePicker) lookup("compare-from")).getValue()));
    choose("compare-crew", "all");
    reopen(Screen.COMPARE);
    awaitText("compare-strips", "Aldermoor: 16 jobs");
  }

  @Test
  void trendOverJobsIsShownAgainAtTheNextStart() {
    show(Screen.TREND, InventedCrews.state(24));
    overJobs();
    awaitText("jobs-points", "control limits");
    choose("jobs-crew", "Blue");
    choose("jobs-chart", "their moving average");
    reopen(Screen.TREND);
    awaitText("jobs-points", "control limits");
    assertTrue(chosen("jobs-crew").contains("Blue"), chosen("jobs-crew"));
    assertTrue(HeadlessToolkit.on(() -> ((ToggleButton) lookup("trend-over-jobs")).isSelected()));
  }

  /** A name that is chosen and that no job has any more is seen, so that it can be let go. */
  @Test
  void crewThatIsNoMoreIsStillSeenToBeChosen() {
    close();
    left = left.withLast(Map.of("compare.crew", "Gone"));
    open();
    show(Screen.COMPARE, InventedCrews.state(24));
    HeadlessToolkit.picture(stage.getScene());
    HeadlessToolkit.until("the choice", () -> chosen("compare-crew").contains("Gone"));
  }

  @Test
  void inLargeLettersTheAnswerComesBeforeTheLists() {
    show(Screen.COMPARE, InventedCrews.state(24));
    HeadlessToolkit.run(
        () -> {
          stage.setWidth(1280);
          stage.setHeight(800);
        });
    awaitText("compare-strips", "Amber: 12 jobs");
    HeadlessToolkit.picture(stage.getScene());
    assertFalse(HeadlessToolkit.on(() -> lookup("compare-fold").isVisible()));
    HeadlessToolkit.run(() -> window.settings().become(window.settings().now().withText(200)));
    HeadlessToolkit.picture(stage.getScene());
    Button fold = (Button) lookup("compare-fold");
    assertTrue(HeadlessToolkit.on(fold::isVisible));
    assertTrue(fold.getText().contains("Compare: crews; Check: Column plumb"), fold.getText());
    assertFalse(
        HeadlessToolkit.on(() -> lookup("compare-crew").getParent().getParent().isVisible()));
    Node sentences = lookup("compare-sentences");
    double top =
        HeadlessToolkit.on(() -> sentences.localToScene(sentences.getBoundsInLocal()).getMinY());
    assertTrue(top < 500, "the answer begins at " + top + " of 800 pixels");
    HeadlessToolkit.run(fold::fire);
    assertTrue(
        HeadlessToolkit.on(() -> lookup("compare-crew").getParent().getParent().isVisible()));
    assertEquals(List.of(), HeadlessToolkit.cutTexts(stage.getScene().getRoot()));
  }
}
