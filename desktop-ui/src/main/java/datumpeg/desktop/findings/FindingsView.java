package datumpeg.desktop.findings;

import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.OneAPulse;
import datumpeg.desktop.control.StandingMark;
import datumpeg.desktop.findings.FindingsPage.ShownStage;
import datumpeg.desktop.findings.FindingsPage.StageChoice;
import datumpeg.desktop.text.Words;
import java.util.List;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** What a job's readings say: the answer, what is behind it, the plan, the outcomes. */
public final class FindingsView extends VBox {
  /** With large letters the page is longer than the window, and the drawing gets most of it. */
  private static final PseudoClass LARGE = PseudoClass.getPseudoClass("large");

  private static final PseudoClass LONG = PseudoClass.getPseudoClass("long");
  private static final int LONG_ANSWER = 220;

  private final FindingsViewModel model;
  private final Words words;
  private final Label title = Labels.wrapping("", "heading");
  private final FlowPane stages = new FlowPane();
  private final Label sentence = Labels.vanishing("sentence");
  private final HBox answerLine = new HBox();
  private final Label answer = Labels.wrapping("", "answer");
  private final Label first = Labels.vanishing("first");
  private final VBox causes = new VBox();
  private final ScrollPane causesScroll = new ScrollPane();
  private final Label hint = Labels.wrapping("", "hint");
  private final HBox behindAndDrawing;
  private List<Object> causesShown = List.of();
  private final OneAPulse pieces = new OneAPulse();
  private boolean isFirst = true;
  private final DrawingBox drawings;
  private final Label trouble = Labels.vanishing("trouble");
  private final BehindPane behind;
  private final OutcomeTable outcomes;
  private final VBox body;

  public FindingsView(FindingsViewModel model) {
    this.model = model;
    this.words = model.words();
    this.outcomes = new OutcomeTable(words, model::open);
    this.drawings = new DrawingBox(words, this::large);
    this.behind = new BehindPane(words, model::closeBehind);
    getStyleClass().addAll("screen", "findings-screen");
    stages.getStyleClass().add("stage-choice");
    answerLine.getStyleClass().add("answer-line");
    hint.setText(words.text("behind.hint"));
    answer.setId("answer");
    first.setId("first");
    trouble.setId("findings-trouble");
    behindAndDrawing = behindAndDrawing();
    body = new VBox(answerLine, trouble, behindAndDrawing, outcomes, hint);
    body.getStyleClass().add("findings-body");
    VBox.setVgrow(body, Priority.ALWAYS);
    VBox.setVgrow(behind, Priority.ALWAYS);
    VBox.setVgrow(outcomes, Priority.ALWAYS);
    VBox.setVgrow(behindAndDrawing, Priority.ALWAYS);
    getChildren().addAll(title, stages, sentence, body);
    model.page().addListener((property, before, page) -> show(page));
    show(model.page().get());
  }

  private HBox behindAndDrawing() {
    causes.getStyleClass().add("causes");
    causesScroll.setContent(causes);
    causesScroll.setFitToWidth(true);
    causesScroll.setPrefViewportHeight(1); // as high as the drawing beside it
    causesScroll.getStyleClass().add("causes-scroll");
    causesScroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    causesScroll.setAccessibleText(words.text("findings.behind"));
    HBox both = new HBox(causesScroll, drawings);
    both.getStyleClass().add("behind-and-plan");
    HBox.setHgrow(causesScroll, Priority.ALWAYS);
    HBox.setHgrow(drawings, Priority.ALWAYS);
    return both;
  }

  /** A drawing that is looked at closely takes the place of what stands around it. */
  private void large(boolean large) {
    for (Node node : List.of(causesScroll, outcomes, hint)) {
      node.setVisible(!large);
      node.setManaged(!large);
    }
    behindAndDrawing.pseudoClassStateChanged(LARGE, large);
  }

  /** The chosen stage takes the keys. */
  @Override
  public void requestFocus() {
    stages.getChildren().stream()
        .filter(button -> button instanceof ToggleButton toggle && toggle.isSelected())
        .forEach(Node::requestFocus);
  }

  private void show(FindingsPage page) {
    title.setText(page.title());
    sentence.setText(page.sentence());
    trouble.setText(page.trouble());
    showStages(page);
    page.shown().ifPresent(this::show);
    page.behind().ifPresent(behind::show);
    Node shown = page.behind().isPresent() ? behind : body;
    if (!getChildren().contains(shown)) {
      getChildren().set(getChildren().size() - 1, shown);
    }
    body.setVisible(page.sentence().isEmpty());
    body.setManaged(page.sentence().isEmpty());
  }

  private void showStages(FindingsPage page) {
    boolean focused = stages.getChildren().stream().anyMatch(Node::isFocused);
    stages.getChildren().setAll(page.stages().stream().map(this::stageButton).toList());
    if (focused) {
      requestFocus();
    }
  }

  private ToggleButton stageButton(StageChoice choice) {
    ToggleButton button = new ToggleButton(choice.name(), new StandingMark(choice.gravest()));
    button.getStyleClass().add(choice.measured() ? "measured-stage" : "unmeasured-stage");
    button.setSelected(choice.chosen());
    button.setAccessibleText(choice.name() + ": " + words.standing(choice.gravest()));
    button.setOnAction(event -> model.chooseStage(choice.stage()));
    return button;
  }

  private void show(ShownStage stage) {
    List<Runnable> parts =
        List.of(
            () -> showAnswer(stage),
            () -> showCauses(stage),
            () -> outcomes.show(stage.outcomes()),
            () -> drawings.show(stage.toDraw()));
    if (isFirst) {
      isFirst = false;
      pieces.run(parts);
    } else { // a new reading is shown whole, as soon as can be
      pieces.run(List.of());
      parts.forEach(Runnable::run);
    }
  }

  private void showAnswer(ShownStage stage) {
    answer.setText(stage.answer());
    first.setText(stage.first().isEmpty() ? "" : words.text("findings.first", stage.first()));
    boolean isLong = stage.answer().length() + first.getText().length() > LONG_ANSWER;
    answer.pseudoClassStateChanged(LONG, isLong);
    first.pseudoClassStateChanged(LONG, isLong);
    answerLine.getChildren().setAll(new StandingMark(stage.standing()), new VBox(answer, first));
    answerLine.setAccessibleText(stage.answer() + " " + first.getText());
  }

  /** A card that is being filled in stays as long as the causes are the same. */
  private void showCauses(ShownStage stage) {
    List<Object> now = List.of(stage.causes(), stage.notes(), stage.causesSentence());
    if (now.equals(causesShown)) {
      return;
    }
    causesShown = now;
    causes.getChildren().clear();
    causes.getChildren().add(Labels.wrapping(words.text("findings.behind"), "subheading"));
    if (!stage.causesSentence().isEmpty()) {
      causes.getChildren().add(Labels.wrapping(stage.causesSentence(), "cause-action"));
    }
    stage
        .causes()
        .forEach(cause -> causes.getChildren().add(new CauseBox(cause, words, model::done)));
    if (!stage.notes().isEmpty()) {
      causes.getChildren().add(Labels.wrapping(words.text("findings.notes"), "subheading"));
      stage.notes().forEach(note -> causes.getChildren().add(Labels.wrapping(note, "note")));
    }
  }
}
