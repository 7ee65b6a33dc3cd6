package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.form.RecordJobShelf;
import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.event.ActionEvent;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckMenuItem;
import javafx.scene.control.Labeled;
import javafx.scene.control.MenuButton;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.TitledPane;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The form, in the window, with a record in a temporary folder. */
class FormScreenTest {
  @TempDir Path folder;

  private Settings left = Settings.usual();
  private Stage stage;
  private DesktopWindow window;

  @BeforeEach
  void open() {
    HeadlessToolkit.start();
    openWindow();
  }

  private void openWindow() {
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
                    new RecordJobShelf(folder.resolve("site.db"), "test", Clock.systemUTC()),
                    settings -> left = settings,
                    job -> {}));
    HeadlessToolkit.run(
        () -> {
          window.openOn(stage);
          window.show(new RecordState("site.db", true, "", Optional.empty(), List.of()));
          window.window().screen().set(Screen.FORM);
        });
    HeadlessToolkit.until("the form is there", () -> lookup("form-building-span") != null);
  }

  @AfterEach
  void close() {
    HeadlessToolkit.run(() -> stage.close());
  }

  private Node lookup(String id) {
    return HeadlessToolkit.on(() -> stage.getScene().lookup("#" + id));
  }

  private void type(String id, String text) {
    HeadlessToolkit.run(
        () -> ((TextInputControl) stage.getScene().lookup("#form-" + id)).setText(text));
  }

  private String text(String id) {
    return HeadlessToolkit.on(() -> ((Labeled) stage.getScene().lookup("#" + id)).getText());
  }

  private void awaitText(String id, String part) {
    HeadlessToolkit.until(
        id + " says " + part,
        () ->
            stage.getScene().lookup("#" + id) instanceof Labeled label
                && label.getText().contains(part));
  }

  private void fillIn() {
    type("job-name", "Cart shed, Ashby");
    type("job-id", "ashby-12");
    type("job-site", "Ashby");
    type("job-crew", "Blue");
    type("building-span", "6 m");
    type("building-length", "9 m");
    type("building-bays", "4.5 m; 4.5 m");
    type("building-eave_height", "2.7 m");
    type("building-pitch", "15");
    for (String size : List.of("column_depth", "column_width", "rafter_depth")) {
      type("sections-" + size, "120");
    }
    type("sections-side_girt_depth", "60");
    type("sections-end_girt_depth", "60");
  }

  @Test
  void buildingIsDrawnWhileItIsTyped() {
    Node plan = lookup("form-plan");
    assertFalse(HeadlessToolkit.on(plan::isVisible));
    type("building-span", "6 m");
    type("building-length", "9000");
    HeadlessToolkit.until(
        "the plan", () -> String.valueOf(plan.getAccessibleText()).contains("Length 9000 mm."));
    WritableImage picture = HeadlessToolkit.picture(stage.getScene());
    int dark =
        HeadlessToolkit.darkPixels(
            picture, HeadlessToolkit.on(() -> plan.localToScene(plan.getBoundsInLocal())));
    assertTrue(dark > 600, "the plan shows " + dark + " dark pixels");
    type("building-bays", "4500; 4500");
    HeadlessToolkit.until(
        "the frames", () -> plan.getAccessibleText().contains("3 frames, bays 4500 mm, 4500 mm."));
    WritableImage more = HeadlessToolkit.picture(stage.getScene());
    int darker =
        HeadlessToolkit.darkPixels(
            more, HeadlessToolkit.on(() -> plan.localToScene(plan.getBoundsInLocal())));
    assertTrue(darker > dark, "the frames add nothing to " + dark + " dark pixels");
  }

  @Test
  void mistakeStandsBesideItsFieldAndIsSpoken() {
    fillIn();
    awaitText("form-answer", "All there.");
    type("building-bays", "4.5 m; 4.4 m");
    awaitText("form-building-bays-wrong", "the bays are 100 mm too short.");
    Node bays = lookup("form-building-bays");
    assertEquals("Bays from end 1", HeadlessToolkit.on(bays::getAccessibleText));
    assertTrue(HeadlessToolkit.on(bays::getAccessibleHelp).contains("too short"));
    assertTrue(HeadlessToolkit.on(() -> lookup("form-store").isDisabled()));
    assertEquals(List.of(), HeadlessToolkit.cutTexts(stage.getScene().getRoot()));
  }

  @Test
  void jobIsStoredByAKeyAndThenRevised() {
    fillIn();
    awaitText("form-answer", "All there.");
    HeadlessToolkit.run(
        () ->
            lookup("form-building-span")
                .fireEvent(
                    new KeyEvent(
                        KeyEvent.KEY_PRESSED, "", "", KeyCode.S, false, true, false, false)));
    awaitText("form-said", "Stored as revision 1 of ashby-12.");
    awaitText("form-answer", "Nothing differs");
    type("building-eave_height", "2.8 m");
    awaitText("form-answer", "Look at what differs");
    List<String> differences =
        HeadlessToolkit.on(
            () ->
                HeadlessToolkit.find(
                        lookup("form-differences"), node -> node.getStyleClass().contains("change"))
                    .stream()
                    .map(node -> ((Labeled) node).getText())
                    .toList());
    assertEquals(List.of("Eave height, slab to knee: 2.8 m, was 2.7 m."), differences);
    HeadlessToolkit.run(() -> ((Button) lookup("form-store")).fire());
    awaitText("form-said", "Stored as revision 2 of ashby-12.");
  }

  @Test
  void whatIsTypedIsThereWhenTheWindowIsOpenedAgain() {
    type("job-name", "Half a shed");
    type("building-span", "6 yards");
    awaitText("form-building-span-wrong", "6 yards");
    close();
    openWindow();
    awaitText("form-building-span-wrong", "6 yards");
    assertEquals("Half a shed", typed("job-name"));
    assertEquals("6 yards", typed("building-span"));
    assertTrue(text("form-answer").contains("still needed"), text("form-answer"));
  }

  private String typed(String id) {
    return HeadlessToolkit.on(() -> ((TextInputControl) lookup("form-" + id)).getText());
  }

  @Test
  void cornersAreTypedRowByRowAndDrawn() {
    fillIn();
    HeadlessToolkit.run(
        () -> ((TitledPane) stage.getScene().lookup("#form-group-outline")).setExpanded(true));
    for (String corner : List.of("A1 0 0", "A3 9m 0", "B3 9m 5m", "B1 0 6m")) {
      String[] parts = corner.split(" ");
      String cell = "slab-corners-" + parts[0];
      type("table-slab-corners-name", parts[0]);
      press("form-table-slab-corners-add");
      HeadlessToolkit.until(corner, () -> lookup("form-" + cell + "-1") != null);
      assertTrue(HeadlessToolkit.on(() -> lookup("form-" + cell + "-1").isFocused()), corner);
      type(cell + "-1", parts[1]);
      type(cell + "-2", parts[2]);
    }
    awaitText("form-answer", "All there.");
    Node plan = lookup("form-plan");
    HeadlessToolkit.until(
        "the corners", () -> plan.getAccessibleText().contains("B3 9000 mm, 5000 mm"));
    press("form-table-slab-corners-up-B1");
    awaitText("form-group-outline-wrong", "cross");
    press("form-table-slab-corners-remove-B1");
    awaitText("form-answer", "All there.");
    assertEquals(List.of(), HeadlessToolkit.cutTexts(stage.getScene().getRoot()));
  }

  private void press(String id) {
    HeadlessToolkit.run(() -> ((Button) stage.getScene().lookup("#" + id)).fire());
  }

  @Test
  void stageIsAddedWithItsChecksAndQuestions() {
    fillIn();
    type("stage-name", "curing");
    press("form-add-stage");
    HeadlessToolkit.until("the stage", () -> lookup("form-stages-curing-checks") != null);
    MenuButton checks = (MenuButton) lookup("form-stages-curing-checks");
    assertEquals("none chosen", HeadlessToolkit.on(checks::getText));
    HeadlessToolkit.run(
        () -> {
          CheckMenuItem level = (CheckMenuItem) checks.getItems().get(3);
          level.setSelected(true);
          level.getOnAction().handle(new ActionEvent());
        });
    assertEquals("Slab level, spread", HeadlessToolkit.on(checks::getText));
    type("table-stages-curing-questions-name", "Is it dry?");
    press("form-table-stages-curing-questions-add");
    HeadlessToolkit.until(
        "the question", () -> lookup("form-stages-curing-questions-is-it-dry") != null);
    assertEquals("Is it dry?", typed("stages-curing-questions-is-it-dry"));
    awaitText("form-answer", "All there.");
  }

  @Test
  void jobsLeadToTheForm() {
    HeadlessToolkit.run(() -> window.window().screen().set(Screen.JOBS));
    HeadlessToolkit.run(() -> ((Button) lookup("jobs-new")).fire());
    assertEquals(Screen.FORM, HeadlessToolkit.on(() -> window.window().screen().get()));
    assertTrue(
        HeadlessToolkit.on(() -> lookup("form-job-name").isFocused()), "the name has the keys");
  }

  @Test
  void nothingIsCutAtTwiceTheSize() {
    fillIn();
    HeadlessToolkit.run(() -> window.settings().become(window.settings().now().withText(200)));
    HeadlessToolkit.run(() -> ((Button) lookup("form-new")).fire());
    HeadlessToolkit.until("the other form is offered", () -> lookup("form-aside") != null);
    HeadlessToolkit.picture(stage.getScene());
    Button store = (Button) lookup("form-store");
    assertTrue(
        HeadlessToolkit.on(() -> store.getHeight() >= store.prefHeight(-1) - 1),
        "the button is squeezed: " + store.getLayoutBounds());
    assertEquals(List.of(), HeadlessToolkit.cutTexts(stage.getScene().getRoot()));
    List<Node> sideways =
        HeadlessToolkit.on(
            () ->
                HeadlessToolkit.find(
                    stage.getScene().getRoot(),
                    node ->
                        node instanceof ScrollPane scroll
                            && scroll.getContent().getBoundsInLocal().getWidth()
                                > scroll.getViewportBounds().getWidth() + 1));
    assertEquals(List.of(), sideways, "no part is wider than its place");
  }
}
