package datumpeg.desktop.form;

import datumpeg.desktop.control.FileDrop;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.text.Words;
import java.io.File;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import org.jspecify.annotations.Nullable;

/** The form on the left, what it draws and how it differs on the right. */
public final class FormView extends VBox {
  private static final KeyCombination STORE =
      new KeyCodeCombination(KeyCode.S, KeyCombination.SHORTCUT_DOWN);
  private static final double FORM_SHARE = 0.47;

  private final FormViewModel model;
  private final Words words;
  private final Label heading = Labels.wrapping("", "heading");
  private final Label answer = Labels.wrapping("", "sentence");
  private final Label said = Labels.vanishing("form-said");
  private final Button store = new Button();
  private final Button aside = new Button("");
  private final GroupList groups;
  private final FormDrawings drawings;
  private final VBox strange = new VBox();
  private final VBox differences = new VBox();
  private final ScrollPane right = scroll(new VBox());

  public FormView(FormViewModel model) {
    this.model = model;
    this.words = model.words();
    this.drawings = new FormDrawings(words);
    this.groups =
        new GroupList(
            words,
            new FormActs(model.edits(), this::focused),
            new AddingLine(words, model.edits()));
    getStyleClass().addAll("screen", "form-screen");
    answer.setId("form-answer");
    said.setId("form-said");
    said.textProperty().bind(model.said());
    differences.setId("form-differences");
    strange.getStyleClass().add("changes");
    differences.getStyleClass().add("changes");
    getChildren().addAll(top(), body());
    addEventFilter(KeyEvent.KEY_PRESSED, this::keyed);
    FileDrop.on(this, model::takeFile);
    model.page().addListener((property, before, page) -> show(page));
    FormPage now = model.page().get();
    if (now != null) {
      show(now);
    }
  }

  /** What is always in sight: whether it can be stored. */
  private HBox top() {
    store.setId("form-store");
    store.setText(words.text("form.store"));
    store.setDisable(true);
    store.setMinWidth(USE_PREF_SIZE);
    store.setOnAction(event -> model.store());
    HBox.setHgrow(answer, Priority.ALWAYS);
    HBox top = new HBox(store, answer);
    top.setMinHeight(USE_PREF_SIZE);
    top.getStyleClass().add("form-adding");
    return top;
  }

  private Node body() {
    VBox left = new VBox(heading, buttons(), groups);
    left.getStyleClass().add("form-groups");
    ScrollPane form = scroll(left);
    VBox drawn = new VBox(said, strange);
    drawn.getChildren().addAll(drawings.nodes(right.heightProperty()));
    drawn.getChildren().add(differences);
    drawn.getStyleClass().add("form-drawn");
    right.setContent(drawn);
    said.textProperty().addListener((property, before, now) -> right.setVvalue(0));
    HBox body = new HBox(form, right);
    body.getStyleClass().add("form-body");
    form.prefWidthProperty().bind(body.widthProperty().multiply(FORM_SHARE));
    form.minWidthProperty().bind(form.prefWidthProperty());
    HBox.setHgrow(right, Priority.ALWAYS);
    VBox.setVgrow(body, Priority.ALWAYS);
    return body;
  }

  private static ScrollPane scroll(Node content) {
    ScrollPane scroll = new ScrollPane(content);
    scroll.getStyleClass().add("page-scroll");
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    return scroll;
  }

  private VBox buttons() {
    aside.setId("form-aside");
    aside.setWrapText(true);
    aside.setMinWidth(0);
    Button open = button("form.open-stored", "form-open-stored", model::openStored);
    aside.setOnAction(event -> model.swap());
    FlowPane always =
        new FlowPane(
            button("form.new", "form-new", model::begin),
            button("form.import", "form-import", this::chooseFile));
    always.getStyleClass().add("chart-buttons");
    VBox buttons = new VBox(always);
    buttons.getStyleClass().add("changes");
    model.storedJob().addListener((property, before, job) -> offer(buttons, open, !job.isEmpty()));
    aside
        .textProperty()
        .addListener((property, before, name) -> offer(buttons, aside, !name.isEmpty()));
    return buttons;
  }

  private static void offer(VBox buttons, Button button, boolean offered) {
    buttons.getChildren().remove(button);
    if (offered) {
      buttons.getChildren().add(button);
    }
  }

  private Button button(String key, String id, Runnable action) {
    Button button = new Button(words.text(key));
    button.setId(id);
    button.setMinWidth(USE_PREF_SIZE);
    button.setOnAction(event -> action.run());
    return button;
  }

  private void chooseFile() {
    FileChooser files = new FileChooser();
    files.setTitle(words.text("form.import"));
    files
        .getExtensionFilters()
        .add(new FileChooser.ExtensionFilter(words.text("form.job-files"), "*.toml"));
    @Nullable File file = files.showOpenDialog(getScene().getWindow());
    if (file != null) {
      model.takeFile(file.toPath());
    }
  }

  private void keyed(KeyEvent event) {
    if (STORE.match(event)) {
      event.consume();
      if (!store.isDisabled()) {
        model.store();
      }
    }
  }

  /** The first field takes the keys. */
  @Override
  public void requestFocus() {
    groups.requestFocus();
  }

  private void show(FormPage page) {
    heading.setText(page.heading());
    answer.setText(page.answer());
    store.setText(page.save());
    store.setDisable(!page.maySave());
    aside.setText(page.aside().isEmpty() ? "" : words.text("form.take-up", page.aside()));
    boolean first = groups.getChildren().isEmpty();
    groups.show(page);
    if (first && isFocused()) {
      requestFocus();
    }
    strange.getChildren().setAll(page.strange().stream().map(this::strange).toList());
    differences.getChildren().clear();
    if (!page.differences().isEmpty()) {
      differences
          .getChildren()
          .add(Labels.wrapping(words.text("form.differs-heading"), "subheading"));
      page.differences()
          .forEach(text -> differences.getChildren().add(Labels.wrapping(text, "change")));
    }
    drawings.draw(page);
  }

  private Node strange(FormPage.Strange found) {
    Label sentence = Labels.wrapping(found.sentence(), "field-wrong");
    if (found.path().isEmpty()) {
      return sentence;
    }
    Button away = new Button(words.text("form.leave-out"));
    away.setAccessibleText(words.text("form.leave-out") + ": " + found.path());
    away.setMinWidth(USE_PREF_SIZE);
    away.setOnAction(event -> model.edits().remove(found.path()));
    HBox line = new HBox(sentence, away);
    HBox.setHgrow(sentence, Priority.ALWAYS);
    line.getStyleClass().add("form-adding");
    return line;
  }

  private void focused(String path) {
    drawings.light(path);
    drawings
        .of(path)
        .ifPresent(
            drawing ->
                right.setVvalue(drawing.getBoundsInParent().getMinY() / Math.max(1, outOfSight())));
    FormPage now = model.page().get();
    if (now != null) {
      drawings.draw(now);
    }
  }

  /** How much higher the right half is than what is seen of it. */
  private double outOfSight() {
    return right.getContent().getBoundsInLocal().getHeight()
        - right.getViewportBounds().getHeight();
  }
}
