package datumpeg.desktop.findings;

import datumpeg.desktop.control.Drawing;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.StandingMark;
import datumpeg.desktop.findings.FindingsPage.CauseCard;
import datumpeg.desktop.findings.FindingsPage.ShownStage;
import datumpeg.desktop.findings.FindingsPage.StageChoice;
import datumpeg.desktop.text.Words;
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
  private final FindingsViewModel model;
  private final Words words;
  private final Label title = Labels.wrapping("", "heading");
  private final FlowPane stages = new FlowPane();
  private final Label sentence = Labels.vanishing("sentence");
  private final HBox answerLine = new HBox();
  private final Label answer = Labels.wrapping("", "answer");
  private final Label first = Labels.vanishing("first");
  private final VBox causes = new VBox();
  private final Drawing plan = new Drawing("plan");
  private final Label legend = Labels.wrapping("", "hint");
  private final OutcomeTable outcomes;
  private final VBox body;

  public FindingsView(FindingsViewModel model) {
    this.model = model;
    this.words = model.words();
    this.outcomes = new OutcomeTable(words);
    getStyleClass().addAll("screen", "findings-screen");
    stages.getStyleClass().add("stage-choice");
    answerLine.getStyleClass().add("answer-line");
    answer.setId("answer");
    first.setId("first");
    body = new VBox(answerLine, behindAndPlan(), outcomes);
    body.getStyleClass().add("findings-body");
    body.managedProperty().bind(sentence.managedProperty().not());
    body.visibleProperty().bind(body.managedProperty());
    VBox.setVgrow(body, Priority.ALWAYS);
    VBox.setVgrow(outcomes, Priority.ALWAYS);
    getChildren().addAll(title, stages, sentence, body);
    model.page().addListener((property, before, page) -> show(page));
    show(model.page().get());
  }

  private Node behindAndPlan() {
    causes.getStyleClass().add("causes");
    ScrollPane scroll = new ScrollPane(causes);
    scroll.setFitToWidth(true);
    scroll.getStyleClass().add("causes-scroll");
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setAccessibleText(words.text("findings.behind"));
    VBox.setVgrow(plan, Priority.ALWAYS);
    VBox drawn = new VBox(plan, legend);
    drawn.getStyleClass().add("plan-box");
    HBox both = new HBox(scroll, drawn);
    both.getStyleClass().add("behind-and-plan");
    HBox.setHgrow(scroll, Priority.ALWAYS);
    return both;
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
    showStages(page);
    page.shown().ifPresent(this::show);
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
    answer.setText(stage.answer());
    first.setText(stage.first().isEmpty() ? "" : words.text("findings.first", stage.first()));
    answerLine.getChildren().setAll(new StandingMark(stage.standing()), new VBox(answer, first));
    answerLine.setAccessibleText(stage.answer() + " " + first.getText());
    showCauses(stage);
    PlanSketch sketch = stage.plan();
    plan.paint(
        sketch.spoken(), (graphics, palette) -> new PlanPainter(sketch, graphics, palette).paint());
    legend.setText(sketch.sentence().isEmpty() ? sketch.legend() : sketch.sentence());
    outcomes.show(stage.outcomes());
  }

  private void showCauses(ShownStage stage) {
    causes.getChildren().clear();
    causes.getChildren().add(Labels.wrapping(words.text("findings.behind"), "subheading"));
    if (!stage.causesSentence().isEmpty()) {
      causes.getChildren().add(Labels.wrapping(stage.causesSentence(), "cause-action"));
    }
    stage.causes().forEach(cause -> causes.getChildren().add(card(cause)));
    if (!stage.notes().isEmpty()) {
      causes.getChildren().add(Labels.wrapping(words.text("findings.notes"), "subheading"));
      stage.notes().forEach(note -> causes.getChildren().add(Labels.wrapping(note, "note")));
    }
  }

  private static Node card(CauseCard cause) {
    Label sentence = Labels.wrapping(cause.sentence(), "cause-sentence");
    Label action = Labels.wrapping(cause.action(), "cause-action");
    VBox texts = new VBox(sentence, action);
    if (!cause.symptoms().isEmpty()) {
      texts.getChildren().add(Labels.wrapping(cause.symptoms(), "cause-symptoms"));
    }
    HBox.setHgrow(texts, Priority.ALWAYS);
    HBox card = new HBox(new StandingMark(cause.standing()), texts);
    card.getStyleClass().add("cause-card");
    return card;
  }
}
