package datumpeg.desktop.measure;

import datumpeg.desktop.control.BigFigure;
import datumpeg.desktop.control.Drawing;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.measure.MeasurePage.ActButton;
import datumpeg.desktop.measure.MeasurePage.Running;
import datumpeg.desktop.measure.MeasurePage.Stands;
import datumpeg.desktop.measure.SessionShot.LinkStand;
import datumpeg.desktop.text.Words;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** A session as it goes: what to do, where, the value in letters to be read from afar, buttons. */
final class RunningPane extends VBox {
  private static final PseudoClass TIGHT = PseudoClass.getPseudoClass("tight");
  private static final double MOST_TIGHT_EM = 34;

  private final MeasureViewModel model;
  private final Words words;
  private final Label title = Labels.wrapping("", "measure-title");
  private final Label instruction = Labels.wrapping("", "instruction");
  private final Label expected = Labels.wrapping("", "expected");
  private final Drawing where = new Drawing("where");
  private final Drawing bar = new Drawing("limit-bar");
  private final Label barWords = Labels.vanishing("hint");
  private final BigFigure big = new BigFigure("big-value");
  private final Label bigWords = Labels.wrapping("", "big-words");
  private final Label question = Labels.vanishing("question");
  private final VBox choices = new VBox();
  private final TargetList targets;
  private final Label next = Labels.wrapping("", "next");
  private final Label said = Labels.vanishing("said");
  private final Label trouble = Labels.vanishing("trouble");
  private final Label typed = new Label();
  private final Label links = Labels.wrapping("", "links");
  private final TextArea bytes = new TextArea();
  private final FlowPane acts = new FlowPane(8, 8);
  private final Map<Act, Button> buttons = new EnumMap<>(Act.class);
  private List<String> choicesShown = List.of();
  private boolean isTyping;
  private Optional<Running> shown = Optional.empty();
  private Optional<MeasurePage.Bar> barShown = Optional.empty();

  RunningPane(MeasureViewModel model) {
    this.model = model;
    this.words = model.words();
    this.targets = new TargetList(words, model.session()::goTo);
    getStyleClass().add("running");
    instruction.setId("instruction");
    expected.setId("expected");
    big.setId("big");
    bigWords.setId("big-words");
    question.setId("question");
    next.setId("next");
    said.setId("said");
    trouble.setId("measure-trouble");
    typed.setId("typed");
    links.setId("links");
    bytes.setId("bytes");
    bytes.setEditable(false);
    bytes.setFocusTraversable(false);
    bytes.setAccessibleText(words.text("measure.bytes"));
    bytes.managedProperty().bind(bytes.visibleProperty());
    typed.getStyleClass().add("typed");
    typed.setMinWidth(USE_PREF_SIZE);
    HBox middle = middle();
    VBox.setVgrow(middle, Priority.ALWAYS);
    VBox.setVgrow(targets, Priority.ALWAYS);
    middle.visibleProperty().bind(targets.visibleProperty().not());
    middle.managedProperty().bind(middle.visibleProperty());
    acts.getStyleClass().add("acts");
    getChildren()
        .addAll(title, instruction, trouble, middle, targets, question, next, acts, status());
    choices.getStyleClass().add("held-choices");
    choices.setVisible(false);
    choices.setMinWidth(USE_PREF_SIZE);
    choices.managedProperty().bind(choices.visibleProperty());
    where.managedProperty().bind(where.visibleProperty());
    title.managedProperty().bind(title.visibleProperty());
    next.managedProperty().bind(next.visibleProperty());
  }

  private HBox middle() {
    Label plan = new Label(words.text("measure.plan"));
    plan.getStyleClass().add("plan-word");
    plan.setMinWidth(USE_PREF_SIZE);
    HBox planned = new HBox(plan, expected);
    planned.getStyleClass().add("planned");
    VBox.setVgrow(big, Priority.ALWAYS);
    VBox value = new VBox(planned, bar, barWords, big, bigWords);
    value.getStyleClass().add("value-box");
    bar.managedProperty().bind(bar.visibleProperty());
    HBox.setHgrow(where, Priority.ALWAYS);
    HBox.setHgrow(value, Priority.ALWAYS);
    HBox.setHgrow(bytes, Priority.SOMETIMES);
    HBox middle = new HBox(where, choices, value, bytes);
    middle.getStyleClass().add("measure-middle");
    return middle;
  }

  private Node status() {
    FlowPane status = new FlowPane(20, 2, typed, said, links);
    status.getStyleClass().add("measure-status");
    status.setMinWidth(0); // a long sentence wraps, and never makes the window wider
    said.maxWidthProperty().bind(status.widthProperty());
    links.maxWidthProperty().bind(status.widthProperty());
    typed.managedProperty().bind(typed.visibleProperty());
    return status;
  }

  void show(Running running) {
    title.setText(running.title());
    instruction.setText(running.instruction());
    expected.setText(running.expected());
    big.setText(running.big());
    shown = Optional.of(running);
    showWords(isTight());
    for (Stands stands : Stands.values()) {
      big.pseudoClassStateChanged(
          PseudoClass.getPseudoClass(stands.name().toLowerCase(java.util.Locale.ROOT)),
          stands == running.bigStands());
    }
    question.setText(running.question());
    next.setText(running.next());
    trouble.setText(running.trouble());
    isTyping = !running.typed().isEmpty();
    typed.setText(
        running.typed().isEmpty()
            ? words.text("measure.nothing-typed")
            : words.text("measure.typed", running.typed()));
    links.setText(links(running.links()));
    showBytes(running.bytes());
    showSketch(running);
    showBar(running);
    showChoices(running.choices());
    targets.show(running.targets());
    List<Button> offered = running.acts().stream().map(this::shown).toList();
    if (!acts.getChildren().equals(offered)) {
      acts.getChildren().setAll(offered);
    }
  }

  /** The Enter key: goes to the target chosen in the list; false where there is no list. */
  boolean chooseTarget() {
    return targets.choose();
  }

  /** With large letters on a small screen what matters least gives way. */
  @Override
  protected void layoutChildren() {
    boolean tight = isTight();
    boolean asked = choices.isVisible();
    pseudoClassStateChanged(TIGHT, tight);
    showBarWords(tight);
    showWords(tight);
    title.setVisible(!tight);
    where.setVisible(!tight || !asked);
    next.setVisible(!tight || (question.getText().isEmpty() && !targets.isVisible()));
    typed.setVisible(!tight || isTyping || said.getText().isEmpty());
    super.layoutChildren();
  }

  private void showSketch(Running running) {
    running
        .sketch()
        .ifPresentOrElse(
            sketch ->
                where.paint(
                    sketch.spoken(),
                    (graphics, palette) -> new TargetPainter(sketch, graphics, palette).paint()),
            () -> where.paint("", (graphics, palette) -> {}));
  }

  private void showBar(Running running) {
    bar.setVisible(running.bar().isPresent());
    barShown = running.bar();
    showBarWords(isTight());
    running
        .bar()
        .ifPresent(
            shown ->
                bar.paint(
                    shown.words() + " " + running.bigWords(),
                    (graphics, palette) -> new BarPainter(shown, graphics, palette).paint()));
  }

  private void showBarWords(boolean tight) {
    barWords.setText(
        barShown.map(tight ? MeasurePage.Bar::shortWords : MeasurePage.Bar::words).orElse(""));
  }

  /** While a question is asked, the reading before it can do without its sentence. */
  private void showWords(boolean tight) {
    shown.ifPresent(
        running -> {
          bigWords.setText(tight ? running.bigShort() : running.bigWords());
          said.setText(tight && !running.question().isEmpty() ? "" : running.said());
        });
  }

  private boolean isTight() {
    return getHeight() < MOST_TIGHT_EM * typed.getFont().getSize();
  }

  private void showBytes(String rows) {
    bytes.setVisible(!rows.isEmpty());
    if (!rows.equals(bytes.getText())) {
      bytes.setText(rows);
      bytes.setScrollTop(Double.MAX_VALUE);
    }
  }

  private void showChoices(List<String> texts) {
    choices.setVisible(!texts.isEmpty());
    if (texts.equals(choicesShown)) {
      return;
    }
    choicesShown = texts;
    choices.getChildren().clear();
    for (int i = 0; i < texts.size(); i++) {
      int index = i;
      Button button = large(texts.get(i));
      button.setWrapText(true);
      button.setMaxWidth(Double.MAX_VALUE);
      button.setId("choice-" + (i + 1));
      button.setOnAction(event -> model.session().choice(index));
      choices.getChildren().add(button);
    }
  }

  private Button shown(ActButton shown) {
    Button button = buttons.computeIfAbsent(shown.act(), this::button);
    button.setText(shown.text());
    button.setDisable(!shown.possible());
    return button;
  }

  private Button button(Act act) {
    Button button = large("");
    button.setId("act-" + act.id());
    button.setOnAction(event -> model.session().act(act));
    return button;
  }

  private static Button large(String text) {
    Button button = new Button(text);
    button.getStyleClass().add("large-button");
    return button;
  }

  private String links(List<LinkStand> stands) {
    return stands.isEmpty()
        ? words.text("measure.link-none")
        : stands.stream().map(this::link).collect(Collectors.joining("    "));
  }

  private String link(LinkStand link) {
    if (link.isLost()) {
      return words.text("measure.link-lost", link.address());
    }
    String status = link.status().isEmpty() ? "" : ", " + link.status();
    return words.text("measure.link-open", link.address(), link.byteCount(), status);
  }
}
