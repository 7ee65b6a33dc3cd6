package datumpeg.desktop.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.app.HeadlessToolkit;
import datumpeg.desktop.source.InventedCrews;
import datumpeg.desktop.text.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.DatePicker;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.DataFormat;
import javafx.scene.input.Dragboard;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.TransferMode;
import javafx.scene.robot.Robot;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The list of jobs on screen: what narrows it, a file dropped on it, a job file saved from it. */
class JobsScreenTest {
  private static final String FILE = "[job] # as it is in the record\n";

  @TempDir Path folder;
  private final List<Path> taken = new ArrayList<>();
  private final JobsViewModel model =
      new JobsViewModel(Words.of(Locale.ROOT), ZoneOffset.UTC, (job, stage) -> {});
  private Stage stage;
  private JobsView view;

  @BeforeEach
  void open() {
    HeadlessToolkit.start();
    stage = HeadlessToolkit.on(Stage::new);
    view =
        HeadlessToolkit.on(
            () ->
                new JobsView(
                    model,
                    new JobActions(
                        () -> {},
                        job -> {},
                        taken::add,
                        job -> job.equals("job-3") ? Optional.of(FILE) : Optional.empty())));
    HeadlessToolkit.run(
        () -> {
          stage.setScene(new Scene(view, 1280, 800));
          stage.show();
          model.show(InventedCrews.state(24));
        });
    HeadlessToolkit.until("the filters", () -> lookup("jobs-crew") != null);
  }

  @AfterEach
  void close() {
    HeadlessToolkit.run(stage::close);
  }

  private Node lookup(String id) {
    return stage.getScene().lookup("#" + id);
  }

  private List<String> shown() {
    return HeadlessToolkit.on(
        () ->
            ((ListView<?>) lookup("jobs"))
                .getItems().stream().map(card -> ((JobCard) card).id()).toList());
  }

  private void choose(String id, String word) {
    HeadlessToolkit.run(
        () -> {
          ComboBox<?> box = (ComboBox<?>) lookup(id);
          for (int i = 0; i < box.getItems().size(); i++) {
            if (box.getItems().get(i).toString().endsWith("name=" + word + "]")) {
              box.getSelectionModel().select(i);
            }
          }
        });
  }

  @Test
  void everyPartOfTheBarNarrowsTheListAndOneButtonShowsAllAgain() {
    assertEquals(24, shown().size());
    choose("jobs-crew", "Amber");
    assertEquals(12, shown().size());
    choose("jobs-site", "Fernhollow");
    assertEquals(List.of("job-0", "job-12", "job-18", "job-6"), shown().stream().sorted().toList());
    choose("jobs-slab", "Stonecroft");
    assertEquals(List.of("job-18", "job-6"), shown().stream().sorted().toList());
    HeadlessToolkit.run(
        () -> ((DatePicker) lookup("jobs-work-from")).setValue(LocalDate.of(2026, 3, 10)));
    assertEquals(List.of("job-18"), shown());
    HeadlessToolkit.run(() -> ((Button) lookup("jobs-filter-clear")).fire());
    assertEquals(24, shown().size());
    assertEquals(Optional.empty(), day("jobs-work-from"));
    assertTrue(HeadlessToolkit.on(() -> lookup("jobs-filter-clear").isDisabled()));
  }

  private Optional<LocalDate> day(String id) {
    return HeadlessToolkit.on(() -> Optional.ofNullable(((DatePicker) lookup(id)).getValue()));
  }

  @Test
  void wordsNarrowTheListAndEscapeShowsAllAgain() {
    TextField words = (TextField) HeadlessToolkit.on(() -> lookup("jobs-filter"));
    HeadlessToolkit.run(() -> words.setText("blue job-23"));
    assertEquals(List.of("job-23"), shown());
    HeadlessToolkit.run(() -> words.setText("nowhere"));
    assertFalse(HeadlessToolkit.on(() -> lookup("jobs").isVisible()));
    List<Node> sentences =
        HeadlessToolkit.on(
            () ->
                HeadlessToolkit.find(
                    view, node -> node.isVisible() && node.getStyleClass().contains("sentence")));
    assertEquals(1, sentences.size(), "an empty list says why");
    assertTrue(((Labeled) sentences.get(0)).getText().contains("nowhere"));
    HeadlessToolkit.run(
        () ->
            words.fireEvent(
                new KeyEvent(
                    KeyEvent.KEY_PRESSED, "", "", KeyCode.ESCAPE, false, false, false, false)));
    assertEquals(24, shown().size());
    assertEquals("", HeadlessToolkit.on(words::getText));
  }

  /** A drag begun on the list and let go on it, by a robot. */
  private void drop(List<java.io.File> files) {
    AtomicBoolean begun = new AtomicBoolean();
    AtomicBoolean done = new AtomicBoolean();
    Robot robot = HeadlessToolkit.on(Robot::new);
    HeadlessToolkit.run(
        () -> {
          view.setOnDragDetected(
              event -> {
                Dragboard board = view.startDragAndDrop(TransferMode.COPY);
                board.setContent(Map.of(DataFormat.FILES, files));
                begun.set(true);
                event.consume();
              });
          view.setOnDragDone(event -> done.set(true));
          move(robot, 4);
          robot.mousePress(MouseButton.PRIMARY);
        });
    for (int at = 6; at < 60 && !begun.get(); at += 6) {
      int to = at;
      HeadlessToolkit.run(() -> move(robot, to));
    }
    HeadlessToolkit.until("the drag begins", begun::get);
    for (int at = 60; at < 90; at += 6) {
      int to = at;
      HeadlessToolkit.run(() -> move(robot, to));
    }
    HeadlessToolkit.run(() -> robot.mouseRelease(MouseButton.PRIMARY));
    HeadlessToolkit.until("the drag ends", done::get);
  }

  private void move(Robot robot, double x) {
    robot.mouseMove(view.localToScreen(x, 4));
  }

  @Test
  void oneFileThatIsDroppedBeginsAJobAndOfSeveralNoneDoes() {
    Path file = folder.resolve("job.toml");
    drop(List.of(file.toFile(), folder.resolve("other.toml").toFile()));
    assertEquals(List.of(), taken);
    drop(List.of(file.toFile()));
    assertEquals(List.of(file), taken);
  }

  @Test
  void jobFileIsSavedByteForByteAndOneThatIsNotThereIsSaid() throws IOException {
    JobButtons buttons =
        (JobButtons)
            HeadlessToolkit.on(
                () -> HeadlessToolkit.find(view, node -> node instanceof JobButtons).get(0));
    Path file = folder.resolve("job-3.toml");
    HeadlessToolkit.run(() -> buttons.write(file, "job-3"));
    untilExported("Saved as " + file + ".");
    assertEquals(FILE, Files.readString(file));
    HeadlessToolkit.run(() -> buttons.write(folder.resolve("job-4.toml"), "job-4"));
    untilExported("job-4");
    assertFalse(Files.exists(folder.resolve("job-4.toml")));
    try (var files = Files.list(folder)) {
      assertEquals(1, files.count(), "nothing unfinished stays");
    }
  }

  private void untilExported(String part) {
    HeadlessToolkit.until(part, () -> ((Labeled) lookup("jobs-exported")).getText().contains(part));
  }
}
