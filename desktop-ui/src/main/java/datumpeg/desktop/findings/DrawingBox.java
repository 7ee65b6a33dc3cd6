package datumpeg.desktop.findings;

import datumpeg.analysis.report.drawing.Drawing;
import datumpeg.analysis.report.drawing.Mark;
import datumpeg.desktop.background.LatestAnswer;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.PicturePainter;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** The drawings of a stage, one at a time. */
final class DrawingBox extends VBox {
  /** How large words are drawn at least, as part of those on a button. */
  private static final double LEAST_LETTERS = 0.8;

  /** The same where the drawing takes all the room. */
  private static final double LEAST_LETTERS_LARGE = 1.1;

  /** How small they may become, as part of the same, where that lets the whole drawing be seen. */
  private static final double LEAST_LETTERS_OF_ALL = 0.7;

  private static final double LEAST_LETTERS_OF_ALL_LARGE = 0.75;

  private final FlowPane choice = new FlowPane(6, 4);
  private final datumpeg.desktop.control.Drawing place =
      new datumpeg.desktop.control.Drawing("plan");
  private final ScrollPane around = new ScrollPane(place);
  private final Label caption = Labels.vanishing("hint");
  private final ToggleButton larger;
  private final LatestAnswer<StageToDraw, List<Drawing>> answers =
      new LatestAnswer<>(
          LatestAnswer.worker("drawings of findings"),
          Platform::runLater,
          StageToDraw::drawings,
          this::show);
  private final String none;
  private @Nullable StageToDraw asked;
  private List<Drawing> drawings = List.of();
  private String chosen = "";

  /**
   * @param large is told whether the drawing shall take all the room
   */
  DrawingBox(Words words, Consumer<Boolean> large) {
    none = words.text("findings.no-drawing");
    getStyleClass().add("plan-box");
    choice.getStyleClass().add("drawing-choice");
    larger = new ToggleButton(words.text("findings.larger"));
    larger.setId("drawing-larger");
    larger.setOnAction(
        event -> {
          large.accept(larger.isSelected());
          keepReadable();
        });
    larger.fontProperty().addListener((property, before, now) -> keepReadable());
    around.setFitToWidth(true);
    around.setFitToHeight(true);
    around.getStyleClass().add("drawing-scroll");
    around.viewportBoundsProperty().addListener(seen -> keepReadable());
    around.setAccessibleText(words.text("findings.drawing"));
    VBox.setVgrow(around, Priority.ALWAYS);
    getChildren().addAll(choice, around, caption);
  }

  /** Asks for the drawings of a stage; those of another are not left standing meanwhile. */
  void show(StageToDraw toDraw) {
    StageToDraw before = asked;
    if (toDraw.equals(before)) {
      return;
    }
    asked = toDraw;
    if (before == null || !toDraw.isOfTheStageOf(before)) {
      clear("");
    }
    answers.ask(toDraw);
  }

  private void show(List<Drawing> newDrawings) {
    if (newDrawings.isEmpty()) {
      clear(none);
    } else if (!newDrawings.equals(drawings)) {
      drawings = newDrawings;
      showChoice();
    }
  }

  private void clear(String sentence) {
    choice.getChildren().clear();
    place.paint(sentence, (graphics, palette) -> {});
    caption.setText(sentence);
    drawings = List.of();
  }

  private void showChoice() {
    boolean known = drawings.stream().anyMatch(drawing -> drawing.title().equals(chosen));
    if (!known) {
      chosen = drawings.get(0).title();
    }
    ToggleGroup one = new ToggleGroup();
    choice.getChildren().clear();
    for (Drawing drawing : drawings) {
      ToggleButton button = new ToggleButton(drawing.title());
      button.setToggleGroup(one);
      button.setSelected(drawing.title().equals(chosen));
      button.setOnAction(
          event -> {
            button.setSelected(true);
            chosen = drawing.title();
            paint(drawing);
            if (!larger.isSelected()) {
              larger.fire();
            }
          });
      choice.getChildren().add(button);
      if (button.isSelected()) {
        paint(drawing);
      }
    }
    choice.getChildren().add(larger);
  }

  /** In a place much too small for its words a drawing is scrolled, not shrunk. */
  private void keepReadable() {
    drawings.stream()
        .filter(drawing -> drawing.title().equals(chosen))
        .findFirst()
        .ifPresent(
            drawing -> {
              double button = larger.getFont().getSize() / Mark.FONT_SIZE;
              double readable =
                  button * (larger.isSelected() ? LEAST_LETTERS_LARGE : LEAST_LETTERS);
              double least =
                  button
                      * (larger.isSelected() ? LEAST_LETTERS_OF_ALL_LARGE : LEAST_LETTERS_OF_ALL);
              double whole =
                  (around.getViewportBounds().getHeight() - 2) / drawing.picture().height();
              double scale = whole >= least ? Math.min(readable, whole) : readable;
              around.setPrefViewportHeight(readable * drawing.picture().height());
              place.setMinSize(
                  scale * drawing.picture().width(), scale * drawing.picture().height());
            });
  }

  private void paint(Drawing drawing) {
    keepReadable();
    caption.setText(drawing.caption());
    place.paint(
        drawing.title() + ". " + drawing.caption(),
        (graphics, palette) -> new PicturePainter(drawing.picture(), graphics, palette).paint());
  }
}
