package datumpeg.desktop.measure;

import datumpeg.bridge.collect.Guide;
import datumpeg.desktop.control.Choice;
import datumpeg.desktop.control.ChoiceName;
import datumpeg.desktop.control.ChoiceWidth;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.SteadyList;
import datumpeg.desktop.measure.MeasurePage.JobChoice;
import datumpeg.desktop.measure.Sessions.StageChoice;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.OptionalInt;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** What is chosen before a session: job, stage, order, round, person, meters. */
final class SetupPane extends ScrollPane {
  private final MeasureViewModel model;
  private final Words words;
  private final Label sentence = Labels.vanishing("sentence");
  private final ComboBox<JobChoice> jobs = new ComboBox<>();
  private final ComboBox<StageChoice> stages = new ComboBox<>();
  private final ComboBox<Choice> targets = new ComboBox<>();
  private final ToggleButton listed;
  private final ToggleButton any;
  private final TextField round = new TextField();
  private final TextField operator = new TextField();
  private final LinkRows links;
  private final Button begin;
  private final Button goOn;
  private final Button watch;
  private final FlowPane begins = new FlowPane(12, 8);
  private boolean showing;

  SetupPane(MeasureViewModel model) {
    this.model = model;
    this.words = model.words();
    this.links = new LinkRows(words, model.remembered().links(), model::listen);
    listed = new ToggleButton(words.text("measure.order.listed"));
    any = new ToggleButton(words.text("measure.order.any"));
    begin = button("begin", "measure.begin", () -> begin(""));
    goOn = button("go-on", "measure.begin", model::goOn);
    watch = button("watch", "measure.watch", this::beginWatch);
    getStyleClass().add("setup-scroll");
    setFitToWidth(true);
    setHbarPolicy(ScrollBarPolicy.NEVER);
    prepare();
    Node watching = new FlowPane(12, 6, targets, watch);
    VBox all =
        new VBox(
            sentence,
            row("measure.job", jobs),
            row("measure.stage", stages),
            row("measure.order", new FlowPane(8, 6, listed, any)),
            row("measure.round", new FlowPane(12, 6, round, hint("measure.round-hint"))),
            row("measure.operator", operator),
            row("measure.links", links),
            begins,
            row("measure.watch-target", watching),
            Labels.wrapping(words.text("measure.caution"), "hint"));
    all.getStyleClass().add("setup");
    setContent(all);
  }

  private void prepare() {
    sentence.setId("measure-sentence");
    jobs.setId("measure-job");
    jobs.setConverter(shownAs(job -> job.name().isEmpty() ? job.id() : job.name()));
    jobs.setOnAction(event -> chooseJob());
    stages.setId("measure-stage");
    stages.setConverter(shownAs(this::stageText));
    stages.setOnAction(event -> chooseStage());
    targets.setId("measure-watch-target");
    targets.setConverter(new ChoiceName());
    targets.setVisibleRowCount(12);
    targets.setAccessibleText(words.text("measure.watch-target"));
    ToggleGroup order = new ToggleGroup();
    listed.setToggleGroup(order);
    any.setToggleGroup(order);
    any.setId("measure-order-any");
    listed.setSelected(true);
    round.setId("measure-round");
    round.setPrefColumnCount(4);
    round.setAccessibleText(words.text("measure.round"));
    operator.setId("measure-operator");
    operator.setPrefColumnCount(16);
    operator.setMaxWidth(USE_PREF_SIZE);
    operator.setText(model.remembered().operator());
    operator.setAccessibleText(words.text("measure.operator"));
  }

  private Button button(String id, String key, Runnable doing) {
    Button button = new Button(words.text(key));
    button.setId("measure-" + id);
    button.getStyleClass().add("large-button");
    button.setOnAction(event -> doing.run());
    return button;
  }

  private VBox row(String key, Node node) {
    Label label = Labels.wrapping(words.text(key), "setup-name");
    node.setAccessibleText(words.text(key));
    if (node instanceof ComboBox<?> list) {
      ChoiceWidth.follow(list, label);
    }
    VBox row = new VBox(label, node);
    row.getStyleClass().add("setup-row");
    return row;
  }

  private Label hint(String key) {
    return Labels.wrapping(words.text(key), "hint");
  }

  void show(MeasurePage page) {
    showing = true;
    sentence.setText(page.sentence());
    SteadyList.bring(
        jobs,
        page.jobs(),
        page.jobs().stream().filter(job -> job.id().equals(page.job())).findFirst().orElse(null));
    List<StageChoice> choices = page.choices().map(Sessions.Choices::stages).orElse(List.of());
    StageChoice chosen =
        choices.stream().filter(stage -> stage.id().equals(page.stage())).findFirst().orElse(null);
    SteadyList.bring(stages, choices, chosen);
    List<Choice> watched = chosen == null ? List.of() : chosen.targets();
    Choice kept = targets.getValue();
    boolean isKept = kept != null && watched.contains(kept);
    SteadyList.bring(targets, watched, isKept ? kept : watched.stream().findFirst().orElse(null));
    page.choices().ifPresent(found -> links.offer(found.ports(), found.profiles()));
    links.show(page.listening());
    begin.setDisable(chosen == null);
    watch.setDisable(chosen == null);
    goOn.setText(page.goOn());
    begins.getChildren().setAll(page.goOn().isEmpty() ? List.of(begin) : List.of(begin, goOn));
    showing = false;
  }

  private void chooseJob() {
    JobChoice job = jobs.getValue();
    if (!showing && job != null) {
      model.choose(job.id(), "");
    }
  }

  private void chooseStage() {
    StageChoice stage = stages.getValue();
    if (!showing && stage != null) {
      model.chooseStage(stage.id());
    }
  }

  private String stageText(StageChoice stage) {
    String name = words.stage(stage.id());
    return stage.openCount() == 0
        ? words.text("measure.stage-done", name, stage.allCount())
        : words.text("measure.stage-choice", name, stage.openCount(), stage.allCount());
  }

  private void beginWatch() {
    Choice target = targets.getValue();
    if (target != null) {
      begin(target.id());
    }
  }

  private void begin(String watched) {
    String typed = round.getText().strip();
    if (!typed.matches("0*[1-9]\\d{0,5}|")) {
      model.refuseRound(typed);
      round.requestFocus();
      return;
    }
    MeasurePage page = model.page().get();
    model.begin(
        new SessionWish(
            page.job(),
            page.stage(),
            watched,
            any.isSelected() ? Guide.Order.ANY : Guide.Order.LISTED,
            typed.isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(typed)),
            operator.getText().strip(),
            links.wishes()));
  }

  /** The first thing to choose takes the keys. */
  @Override
  public void requestFocus() {
    jobs.requestFocus();
  }

  private static <T> StringConverter<T> shownAs(java.util.function.Function<T, String> text) {
    return new StringConverter<>() {
      @Override
      public String toString(T value) {
        return value == null ? "" : text.apply(value);
      }

      @Override
      public T fromString(String ignored) {
        throw new UnsupportedOperationException("nothing is typed here");
      }
    };
  }
}
