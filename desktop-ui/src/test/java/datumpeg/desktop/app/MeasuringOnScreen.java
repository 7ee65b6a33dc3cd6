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
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;

/**
 * Measuring on screen by real bytes over a pseudo-terminal: the test is the meter and the cable.
 */
abstract class MeasuringOnScreen {
  /** 12 mm at 96 dots an inch, rounded up. */
  static final double LEAST_BUTTON = 46;

  /** Capital letters of 16 mm at 96 dots an inch, for capitals of 0.72 of the letter size. */
  static final double LEAST_BIG = 60 / 0.72;

  @TempDir Path folder;
  final Stage stage;
  final Pty meter;
  final Path file;
  final LiveWindow window;
  private long seenNanos;

  MeasuringOnScreen(@TempDir Path record) throws IOException {
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

  <T extends Node> T node(Class<T> type, String id) {
    return HeadlessToolkit.on(() -> type.cast(stage.getScene().lookup("#" + id)));
  }

  String text(String id) {
    return HeadlessToolkit.on(
        () ->
            stage.getScene().lookup("#" + id) instanceof Labeled label ? label.getText() : "none");
  }

  void fire(String id) {
    Button button = node(Button.class, id);
    HeadlessToolkit.run(button::fire);
  }

  void untilText(String id, String beginning) {
    HeadlessToolkit.until(
        id + " says " + beginning,
        () ->
            stage.getScene().lookup("#" + id) instanceof Labeled label
                && label.getText().startsWith(beginning));
    seenNanos = System.nanoTime();
  }

  void untilBig(String value) {
    HeadlessToolkit.until(
        value,
        () ->
            stage.getScene().lookup("#big") instanceof BigFigure big
                && big.getText().equals(value));
    seenNanos = System.nanoTime();
  }

  @SuppressWarnings("unchecked")
  void begin() {
    fire("measure-add-link");
    ComboBox<String> link = node(ComboBox.class, "measure-link-1");
    HeadlessToolkit.run(() -> link.getEditor().setText("serial:" + meter.getSlaveName()));
    HeadlessToolkit.until(
        "it can begin", () -> !stage.getScene().lookup("#measure-begin").isDisabled());
    fire("measure-begin");
    untilText("instruction", "Measure from");
    untilText("links", "serial:" + meter.getSlaveName() + ": open");
    seenNanos = System.nanoTime() - 2_000_000_000L; // no value yet
  }

  /**
   * As a person measures: values within a second of one another would be held. The second begins
   * when what came before is seen, since a busy machine takes its time with what was sent.
   */
  void meterSends(String text) {
    LockSupport.parkNanos(seenNanos + 1_100_000_000L - System.nanoTime());
    try {
      meter.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
      meter.getOutputStream().flush();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  void key(Node focused, String typed) {
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

  void press(Node focused, KeyCode code) {
    HeadlessToolkit.run(
        () ->
            focused.fireEvent(
                new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false)));
  }

  List<ReadingEntry> recorded() {
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.READ)) {
      return record.log(StoredJob.find(record, "larkrise-01")).inForce().stream()
          .map(row -> row.entry())
          .toList();
    }
  }

  void assertFits() {
    Scene scene = stage.getScene();
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
          place.getMaxY() <= scene.getHeight() && place.getMaxX() <= scene.getWidth(),
          button + " leaves the window: " + place);
    }
    Node where = HeadlessToolkit.on(() -> stage.getScene().lookup(".where"));
    assertTrue(
        !where.isVisible() || place(where).getHeight() > 100,
        "the drawing is squeezed: " + place(where));
    assertTrue(
        HeadlessToolkit.on(where::getAccessibleText).matches("(?s).*lit: .*slab corner.*"),
        "it is not spoken");
  }

  static Bounds place(Node node) {
    return HeadlessToolkit.on(() -> node.localToScene(node.getBoundsInLocal()));
  }
}
