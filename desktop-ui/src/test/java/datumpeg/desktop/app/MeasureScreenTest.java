package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import datumpeg.desktop.control.BigFigure;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.setting.SettingsViewModel;
import datumpeg.desktop.source.SiteRecordOpening;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.text.Text;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Measuring on screen by real bytes over a pseudo-terminal: the test is the meter and the cable.
 */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
class MeasureScreenTest {
  /** 12 mm at 96 dots an inch, rounded up. */
  private static final double LEAST_BUTTON = 46;

  /** Capital letters of 16 mm at 96 dots an inch, for capitals of 0.72 of the letter size. */
  private static final double LEAST_BIG = 60 / 0.72;

  @TempDir Path folder;
  private final Stage stage;
  private final Pty meter;
  private final Path file;
  private final LiveWindow window;
  private long lastSentNanos = System.nanoTime() - 2_000_000_000L;

  MeasureScreenTest(@TempDir Path record) throws IOException {
    HeadlessToolkit.start();
    file = record.resolve("site.db");
    SampleJob sample = SampleJob.of("larkrise-01", file);
    sample.run(sample.steps().get(0));
    meter = new Pty();
    stage = HeadlessToolkit.on(Stage::new);
    window =
        HeadlessToolkit.on(
            () ->
                new LiveWindow(
                    file.toString(),
                    new SiteRecordOpening(file),
                    "larkrise-01",
                    new SettingsFile(record.resolve("desktop.properties")),
                    Clock.systemUTC(),
                    ZoneOffset.UTC));
    HeadlessToolkit.run(
        () -> {
          window.openOn(stage);
          window.window().window().screen().set(Screen.MEASURE);
        });
    HeadlessToolkit.until(
        "the stage can be chosen",
        () ->
            stage.getScene().lookup("#measure-stage") instanceof ComboBox<?> stages
                && stages.getValue() != null);
  }

  @AfterEach
  void close() throws IOException {
    HeadlessToolkit.run(stage::close);
    window.close();
    if (!meter.isClosed()) {
      meter.close();
    }
  }

  private <T extends Node> T node(Class<T> type, String id) {
    return HeadlessToolkit.on(() -> type.cast(stage.getScene().lookup("#" + id)));
  }

  private String text(String id) {
    return HeadlessToolkit.on(
        () ->
            stage.getScene().lookup("#" + id) instanceof Labeled label ? label.getText() : "none");
  }

  private void fire(String id) {
    Button button = node(Button.class, id);
    HeadlessToolkit.run(button::fire);
  }

  private void untilText(String id, String beginning) {
    HeadlessToolkit.until(
        id + " says " + beginning,
        () ->
            stage.getScene().lookup("#" + id) instanceof Labeled label
                && label.getText().startsWith(beginning));
  }

  private void untilBig(String value) {
    HeadlessToolkit.until(
        value,
        () ->
            stage.getScene().lookup("#big") instanceof BigFigure big
                && big.getText().equals(value));
  }

  @SuppressWarnings("unchecked")
  private void begin() {
    fire("measure-add-link");
    ComboBox<String> link = node(ComboBox.class, "measure-link-1");
    HeadlessToolkit.run(() -> link.getEditor().setText("serial:" + meter.getSlaveName()));
    HeadlessToolkit.until(
        "it can begin", () -> !stage.getScene().lookup("#measure-begin").isDisabled());
    fire("measure-begin");
    untilText("instruction", "Measure from");
    untilText("links", "serial:" + meter.getSlaveName() + ": open");
  }

  /** As a person measures: values within a second of one another would be held. */
  private void meterSends(String text) {
    long pause = lastSentNanos + 1_100_000_000L - System.nanoTime();
    if (pause > 0) {
      LockSupport.parkNanos(pause);
    }
    lastSentNanos = System.nanoTime();
    try {
      meter.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
      meter.getOutputStream().flush();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private void key(Node focused, String typed) {
    HeadlessToolkit.run(
        () ->
            typed
                .chars()
                .mapToObj(Character::toString)
                .forEach(
                    letter -> {
                      focused.fireEvent(
                          new KeyEvent(
                              KeyEvent.KEY_TYPED,
                              letter,
                              letter,
                              KeyCode.UNDEFINED,
                              false,
                              false,
                              false,
                              false));
                    }));
  }

  private void press(Node focused, KeyCode code) {
    HeadlessToolkit.run(
        () ->
            focused.fireEvent(
                new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false)));
  }

  private List<ReadingEntry> recorded() {
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.READ)) {
      return record.log(StoredJob.find(record, "larkrise-01")).inForce().stream()
          .map(row -> row.entry())
          .toList();
    }
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
  void aMeterThatActsAsAKeyboardWorksWhateverHasTheFocus() {
    begin();
    Button undo = node(Button.class, "act-undo");
    HeadlessToolkit.run(undo::requestFocus);
    key(undo, "18.004");
    untilText("typed", "Typed: 18.004");
    press(undo, KeyCode.ENTER);
    untilBig("18.004 m");
    assertEquals(1, recorded().size());
    key(undo, "s");
    HeadlessToolkit.until(
        "one is left out",
        () ->
            stage.getScene().lookup("#next") instanceof Labeled next
                && next.getText().startsWith("Then:")
                && next.getText().contains("One is left out."));
  }

  @Test
  void aMeterThatActsAsAKeyboardWorksOnEveryScreenUnlessAPersonWentToATextField() {
    begin();
    showScreen(Screen.SIGN_OFF);
    TextField name = node(TextField.class, "signoff-by");
    HeadlessToolkit.until(
        "it has the focus",
        () -> {
          name.requestFocus(); // as the screen does
          return name.isFocused();
        });
    key(name, "18.004");
    assertTrue(text("measuring-elsewhere").contains("Typed: 18.004."), text("measuring-elsewhere"));
    press(name, KeyCode.ENTER);
    untilElsewhere("Recorded 18.004 m for slab.A1-slab.A4.");
    assertEquals("", name.getText());

    showScreen(Screen.JOBS);
    Node jobs = node(Node.class, "jobs");
    HeadlessToolkit.run(jobs::requestFocus);
    key(jobs, "20.126");
    press(jobs, KeyCode.ENTER);
    untilElsewhere("Recorded 20.126 m for slab.A1-slab.B4.");
    assertEquals(Screen.JOBS, HeadlessToolkit.on(() -> window.window().window().screen().get()));

    showScreen(Screen.SIGN_OFF);
    click(name);
    key(name, "12");
    assertEquals("12", name.getText(), "a person clicked it: the keys are for it");
    assertEquals(2, recorded().size());
    Node elsewhere = node(Node.class, "screen-sign-off");
    HeadlessToolkit.run(elsewhere::requestFocus);
    HeadlessToolkit.run(name::requestFocus);
    key(name, "9.001");
    press(name, KeyCode.ENTER);
    untilElsewhere("Recorded 9.001 m for slab.A1-slab.B1.");

    key(name, "L1");
    assertTrue(name.getText().endsWith("L1"), "typed into by hand: " + name.getText());
    fire("measuring-back");
    untilText("instruction", "Measure from");
    assertEquals(3, recorded().size());
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

  private void showScreen(Screen screen) {
    HeadlessToolkit.run(() -> window.window().window().screen().set(screen));
  }

  private void untilElsewhere(String what) {
    HeadlessToolkit.until(
        what,
        () ->
            stage.getScene().lookup("#measuring-elsewhere") instanceof Labeled label
                && label.getText().contains(what));
  }

  private static void click(Node node) {
    HeadlessToolkit.run(
        () -> {
          node.fireEvent(
              new MouseEvent(
                  MouseEvent.MOUSE_PRESSED,
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
                  false,
                  null));
          node.requestFocus();
        });
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
    Node cell = HeadlessToolkit.on(() -> cells(targets).get(0));
    assertTrue(place(cell).getHeight() >= LEAST_BUTTON, cell + " is " + place(cell));
    HeadlessToolkit.run(
        () ->
            cell.fireEvent(
                new MouseEvent(
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
                    null)));
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

  @ParameterizedTest
  @CsvSource({"1280, 800, 100", "1280, 800, 200"})
  void everythingFitsAndButtonsCanBeHitWithGloves(double width, double height, int percent) {
    HeadlessToolkit.run(
        () -> {
          stage.setWidth(width);
          stage.setHeight(height);
          SettingsViewModel settings = window.window().settings();
          settings.become(settings.now().withText(percent));
        });
    begin();
    meterSends("18.0035 m\r\n");
    untilBig("18.0035 m");
    assertFits();
    WritableImage picture = HeadlessToolkit.picture(stage.getScene());
    Node big = node(Node.class, "big");
    Text value =
        (Text)
            HeadlessToolkit.on(() -> HeadlessToolkit.find(big, each -> each instanceof Text))
                .get(0);
    assertTrue(value.getFont().getSize() >= LEAST_BIG, value.getFont().toString());
    assertTrue(HeadlessToolkit.darkPixels(picture, place(big)) > 2000, "no big letters");
    assertEquals("18.0035 m", HeadlessToolkit.on(big::getAccessibleText));
    meterSends("19.126 m\r\n");
    untilText("question", "Held: 19.126 m");
    assertFits();
  }

  private void assertFits() {
    WritableImage picture = HeadlessToolkit.picture(stage.getScene());
    Node screen = HeadlessToolkit.on(() -> stage.getScene().lookup(".measure-screen"));
    assertEquals(List.of(), HeadlessToolkit.cutTexts(screen));
    for (Node button :
        HeadlessToolkit.on(
            () ->
                HeadlessToolkit.find(
                    stage.getScene().getRoot(),
                    node -> node.getStyleClass().contains("large-button")))) {
      Bounds place = place(button);
      assertTrue(
          place.getHeight() >= LEAST_BUTTON && place.getWidth() >= LEAST_BUTTON,
          button + " is " + place);
      assertTrue(
          place.getMaxY() <= picture.getHeight() && place.getMaxX() <= picture.getWidth(),
          button + " leaves the window: " + place);
    }
    Node where = HeadlessToolkit.on(() -> stage.getScene().lookup(".where"));
    assertTrue(
        !where.isVisible() || place(where).getHeight() > 100,
        "the drawing is squeezed: " + place(where));
    assertTrue(
        HeadlessToolkit.on(where::getAccessibleText).contains("lit: slab."), "it is not spoken");
  }

  private static Bounds place(Node node) {
    return HeadlessToolkit.on(() -> node.localToScene(node.getBoundsInLocal()));
  }
}
