package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.setting.Theme;
import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.source.JobRow;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.control.TableView;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class DesktopWindowTest {
  private static final SettingsFile.Loaded USUAL = new SettingsFile.Loaded(Settings.usual(), "");

  private static final JobRow OTHER =
      new JobRow(
          "ashby-11",
          "Cart shed with lean-to, Ashby",
          Optional.of(Instant.parse("2026-02-27T16:02:00Z")),
          0,
          "2");
  private static final JobRow BROKEN = new JobRow("old-2", "", Optional.empty(), 5, "3");

  private final List<String> chosen = new ArrayList<>();
  private final Stage stage;
  private final DesktopWindow window;

  DesktopWindowTest() {
    HeadlessToolkit.start();
    stage = HeadlessToolkit.on(Stage::new);
    window =
        HeadlessToolkit.on(
            () ->
                new DesktopWindow(
                    Words.of(Locale.ROOT),
                    ZoneOffset.UTC,
                    USUAL,
                    new NoSessions(),
                    new NoRows(),
                    new NoDesk(),
                    new NoShelf(),
                    settings -> {},
                    chosen::add));
    HeadlessToolkit.run(
        () -> {
          window.openOn(stage);
          window.show(threeJobs());
        });
  }

  @AfterEach
  void close() {
    HeadlessToolkit.run(() -> stage.close());
  }

  private static RecordState threeJobs() {
    return InventedJobs.state(
        List.of(
            InventedJobs.workedOut(InventedJobs.row("1"), InventedJobs.reduced()),
            InventedJobs.workedOut(OTHER, InventedJobs.unmeasured()),
            InventedJobs.cannot(BROKEN, "The job file of old-2 has an unknown key in line 3.")));
  }

  /** What is in the list of jobs moves when its filters come, a moment after it. */
  private WritableImage picture() {
    HeadlessToolkit.until(
        "the filters", () -> screen() != Screen.JOBS || lookup("jobs-crew") != null);
    return HeadlessToolkit.picture(stage.getScene());
  }

  private List<Node> find(String styleClass) {
    return HeadlessToolkit.on(
        () ->
            HeadlessToolkit.find(
                stage.getScene().getRoot(), node -> node.getStyleClass().contains(styleClass)));
  }

  private Node lookup(String id) {
    return HeadlessToolkit.on(() -> stage.getScene().lookup("#" + id));
  }

  private static Bounds place(Node node) {
    return HeadlessToolkit.on(() -> node.localToScene(node.getBoundsInLocal()));
  }

  private void press(Node node, KeyCode key, boolean control) {
    HeadlessToolkit.run(
        () ->
            node.fireEvent(
                new KeyEvent(KeyEvent.KEY_PRESSED, "", "", key, false, control, false, false)));
  }

  private Screen screen() {
    return HeadlessToolkit.on(() -> window.window().screen().get());
  }

  private static void assertInk(WritableImage picture, Node node, int least) {
    int dark = HeadlessToolkit.darkPixels(picture, place(node));
    assertTrue(dark >= least, node + " shows " + dark + " dark pixels, expected " + least);
  }

  private void assertNoTextIsCut() {
    assertEquals(List.of(), HeadlessToolkit.cutTexts(stage.getScene().getRoot()));
  }

  @Test
  void everyJobIsListedWithItsStagesInWordsAndShapes() {
    WritableImage picture = picture();
    List<String> titles =
        List.of("Tool store, Fernhollow", "Cart shed with lean-to, Ashby", "old-2");
    List<Node> cards = find("job-card");
    assertEquals(titles.size(), cards.size());
    cards.forEach(card -> assertInk(picture, card, 400));
    List<String> spoken = HeadlessToolkit.spokenJobs(stage.getScene());
    for (int i = 0; i < titles.size(); i++) {
      assertTrue(spoken.get(i).startsWith(titles.get(i) + ". "), spoken.get(i));
    }
    assertNoTextIsCut();
  }

  @Test
  void jobIsSpokenWithItsCounts() {
    picture();
    String spoken = HeadlessToolkit.on(() -> find("job-cell").get(0).getAccessibleText());
    assertTrue(
        spoken.contains("Arrival: 2 nonconforming, 1 undecided, 1 not measured, 3 conforming."),
        spoken);
    assertTrue(spoken.contains("Set-out: not measured."), spoken);
  }

  @Test
  void answerIsLargeAndComesWithPlanAndOutcomes() {
    HeadlessToolkit.run(() -> window.open(InventedJobs.ID, "arrival"));
    HeadlessToolkit.untilDrawn(stage.getScene());
    WritableImage picture = picture();
    Labeled answer = (Labeled) lookup("answer");
    assertEquals(
        "Do not set out from the slab edges: the slab is 12 mm out of square.", answer.getText());
    assertTrue(answer.getFont().getSize() >= 26, answer.getFont().toString());
    assertInk(picture, answer, 800);
    assertEquals(2, find("cause-card").size());
    Node plan = find("plan").get(0);
    assertInk(picture, plan, 600);
    assertTrue(plan.getAccessibleText().startsWith("Where to look. "), plan.getAccessibleText());
    TableView<?> outcomes = (TableView<?>) lookup("outcomes");
    assertEquals(6, outcomes.getItems().size());
    List<Node> verdicts =
        find("verdict-word").stream()
            .filter(word -> place(outcomes).contains(place(word)))
            .toList();
    assertFalse(verdicts.isEmpty(), "no verdict is in sight");
    verdicts.forEach(word -> assertInk(picture, word, 60));
    assertNoTextIsCut();
  }

  @Test
  void everyStageAndTheTrendFitWithoutCutText() {
    for (String each : List.of("arrival", "lift", "tightening", "roofing")) {
      HeadlessToolkit.run(() -> window.open(InventedJobs.ID, each));
      assertNoTextIsCut();
    }
    HeadlessToolkit.run(() -> window.window().screen().set(Screen.TREND));
    assertNoTextIsCut();
  }

  @Test
  void trendIsDrawnAndSpoken() {
    HeadlessToolkit.run(() -> window.window().screen().set(Screen.TREND));
    WritableImage picture = picture();
    Node chart = find("trend").get(0);
    assertInk(picture, chart, 1500);
    assertTrue(
        chart.getAccessibleText().contains("Lift, round 1: +13.4 ± 2.3 mm, nonconforming."),
        chart.getAccessibleText());
    assertEquals(2, find("change").size());
  }

  @Test
  void emptyTrendIsASentenceAndNoDrawing() {
    HeadlessToolkit.run(
        () -> {
          window.open("ashby-11", "");
          window.window().screen().set(Screen.TREND);
        });
    picture();
    assertFalse(lookup("trend-points").isVisible());
    assertTrue(((Labeled) lookup("trend-sentence")).getText().startsWith("Nothing was found"));
  }

  @Test
  void screensAndJobsAreReachedByKeys() {
    picture();
    Node jobs = lookup("jobs");
    assertTrue(HeadlessToolkit.on(jobs::isFocused), "the list of jobs has no focus");
    press(jobs, KeyCode.DOWN, false);
    press(jobs, KeyCode.ENTER, false);
    assertEquals(Screen.FINDINGS, screen());
    assertEquals("ashby-11", chosen.get(chosen.size() - 1));
    press(stage.getScene().getRoot(), KeyCode.DIGIT3, true);
    assertEquals(Screen.TREND, screen());
    press(stage.getScene().getRoot(), KeyCode.DIGIT1, true);
    assertEquals(Screen.JOBS, screen());
  }

  @Test
  void selectedJobStaysSelectedWhenTheListChanges() {
    picture();
    ListView<?> jobs = (ListView<?>) lookup("jobs");
    HeadlessToolkit.run(() -> jobs.getSelectionModel().select(2));
    HeadlessToolkit.run(
        () ->
            window.show(
                InventedJobs.state(
                    List.of(
                        InventedJobs.cannot(BROKEN, "The job file has an unknown key."),
                        InventedJobs.workedOut(InventedJobs.row("1"), InventedJobs.reduced())))));
    assertEquals(0, HeadlessToolkit.on(() -> jobs.getSelectionModel().getSelectedIndex()));
  }

  @Test
  void recordOutOfReachIsSaidAboveWhatWasRead() {
    RecordState read = threeJobs();
    HeadlessToolkit.run(
        () ->
            window.show(
                new RecordState(
                    read.file(), false, "The record is locked.", read.readAt(), read.jobs())));
    WritableImage picture = picture();
    Labeled trouble = (Labeled) lookup("trouble");
    assertEquals("The record is locked. Shown is what was read at 10:15:31.", trouble.getText());
    assertInk(picture, trouble, 300);
    assertEquals(3, find("job-card").size());
    HeadlessToolkit.run(() -> window.show(read));
    assertFalse(HeadlessToolkit.on(trouble::isVisible));
  }

  @Test
  void recordThatIsNotThereIsASentenceInPlaceOfTheList() {
    HeadlessToolkit.run(
        () ->
            window.show(
                new RecordState(
                    "site.db", false, "There is no record.", Optional.empty(), List.of())));
    WritableImage picture = picture();
    Node sentence = find("sentence").get(0);
    assertTrue(((Labeled) sentence).getText().startsWith("There is no record."));
    assertInk(picture, sentence, 200);
    assertFalse(HeadlessToolkit.on(() -> lookup("jobs").isVisible()));
  }

  @Test
  void textGrowsByKeysAndNothingIsCutAtTwiceTheSize() {
    double before = HeadlessToolkit.on(() -> ((Labeled) lookup("live")).getFont().getSize());
    HeadlessToolkit.run(() -> window.settings().become(Settings.usual().withText(190)));
    press(stage.getScene().getRoot(), KeyCode.PLUS, true);
    for (Screen each : Screen.values()) {
      HeadlessToolkit.run(() -> window.window().screen().set(each));
      double now =
          HeadlessToolkit.atRest(
              stage.getScene(), () -> ((Labeled) lookup("live")).getFont().getSize());
      assertEquals(2 * before, now, 0.1);
      if (each != Screen.FINDINGS) {
        assertNoTextIsCut();
      }
    }
  }

  /** The dark paper shows where the light one did: by its own colour, not by an ink on it. */
  @Test
  void themeReachesDrawings() {
    HeadlessToolkit.run(() -> window.open(InventedJobs.ID, "arrival"));
    HeadlessToolkit.untilDrawn(stage.getScene());
    picture();
    Bounds plan = place(find("plan").get(0));
    int x = (int) plan.getMinX() + 3;
    int y = (int) plan.getMinY() + 3;
    assertEquals("0xffffffff", picture().getPixelReader().getColor(x, y).toString());
    HeadlessToolkit.run(() -> window.settings().become(Settings.usual().with(Theme.DARK)));
    WritableImage dark = picture();
    assertEquals("0x1f272eff", dark.getPixelReader().getColor(x, y).toString());
  }

  @Test
  void feetAndInchesReachWhatIsShownAlready() {
    HeadlessToolkit.run(() -> window.open(InventedJobs.ID, "arrival"));
    HeadlessToolkit.run(
        () -> window.settings().become(Settings.usual().with(LengthDisplay.IMPERIAL)));
    TableView<?> outcomes = (TableView<?>) lookup("outcomes");
    assertTrue(outcomes.getItems().get(0).toString().contains(" in,"), "still in millimetres");
  }

  @Test
  void whatWasShownLastIsShownAgain() {
    HeadlessToolkit.run(() -> window.open(InventedJobs.ID, "arrival"));
    Settings left = HeadlessToolkit.on(() -> window.settings().now());
    DesktopWindow again =
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
                    settings -> {},
                    chosen::add));
    assertEquals(Screen.FINDINGS, HeadlessToolkit.on(() -> again.window().screen().get()));
    assertEquals(InventedJobs.ID, chosen.get(chosen.size() - 1));
    assertEquals("arrival", left.last("stage"));
  }

  @Test
  void everyControlHasANameForAScreenReader() {
    for (Screen each : Screen.values()) {
      HeadlessToolkit.run(() -> window.window().screen().set(each));
      picture();
      List<Node> nameless =
          HeadlessToolkit.on(
              () ->
                  HeadlessToolkit.find(
                      stage.getScene().getRoot(),
                      node -> node.isFocusTraversable() && !named(node)));
      assertEquals(List.of(), nameless, each.id());
    }
  }

  private static boolean named(Node node) {
    boolean labelled = node instanceof Labeled label && !label.getText().isBlank();
    return labelled || (node.getAccessibleText() != null && !node.getAccessibleText().isBlank());
  }
}
