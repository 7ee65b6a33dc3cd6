package datumpeg.desktop.form;

import datumpeg.analysis.report.drawing.Mark;
import datumpeg.analysis.report.drawing.Picture;
import datumpeg.desktop.control.Drawing;
import datumpeg.desktop.control.FileDrop;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.Palette;
import datumpeg.desktop.control.PicturePainter;
import datumpeg.desktop.form.FormPage.Group;
import datumpeg.desktop.text.Words;
import java.io.File;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
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
  private static final Set<String> PORTAL_FIELDS =
      Set.of(
          "building.eave_height",
          "building.roof",
          "building.pitch",
          "sections.column_depth",
          "sections.rafter_depth");
  private static final double FORM_SHARE = 0.47;
  private static final double DRAWING_SHARE = 0.47;

  private final FormViewModel model;
  private final Words words;
  private final Label heading = Labels.wrapping("", "heading");
  private final Label answer = Labels.wrapping("", "sentence");
  private final Label said = Labels.vanishing("form-said");
  private final Button store = new Button();
  private final Button aside = new Button("");
  private final VBox groups = new VBox();
  private final VBox strange = new VBox();
  private final VBox differences = new VBox();
  private final Drawing plan = new Drawing("form-drawing");
  private final Drawing portal = new Drawing("form-drawing");
  private final Label noPlan = Labels.vanishing("sentence");
  private final Label noPortal = Labels.vanishing("sentence");
  private final ScrollPane right = scroll(new VBox());
  private final FlowPane adding;
  private final Map<String, GroupBox> boxes = new HashMap<>();
  private List<String> shown = List.of();
  private int filled = -1;
  private String lit = "";

  public FormView(FormViewModel model) {
    this.model = model;
    this.words = model.words();
    this.adding = adding();
    getStyleClass().addAll("screen", "form-screen");
    answer.setId("form-answer");
    said.setId("form-said");
    said.textProperty().bind(model.said());
    plan.setId("form-plan");
    portal.setId("form-portal");
    differences.setId("form-differences");
    groups.getStyleClass().add("form-groups");
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
    top.getStyleClass().add("form-adding");
    return top;
  }

  private Node body() {
    VBox left = new VBox(heading, buttons(), groups);
    left.getStyleClass().add("form-groups");
    ScrollPane form = scroll(left);
    VBox drawn = new VBox(said, strange, plan, noPlan, portal, noPortal, differences);
    drawn.getStyleClass().add("form-drawn");
    right.setContent(drawn);
    plan.prefHeightProperty().bind(right.heightProperty().multiply(DRAWING_SHARE));
    portal.prefHeightProperty().bind(right.heightProperty().multiply(DRAWING_SHARE));
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

  private FlowPane adding() {
    TextField name = new TextField();
    name.setId("form-meter-name");
    name.setPromptText(words.text("form.meter-prompt"));
    name.setAccessibleText(words.text("form.meter-name"));
    name.setPrefColumnCount(9);
    FlowPane line =
        new FlowPane(
            button("form.add-opening", "form-add-opening", model::addOpening),
            name,
            button(
                "form.add-meter",
                "form-add-meter",
                () -> {
                  model.addMeter(name.getText());
                  name.clear();
                }));
    line.getStyleClass().add("chart-buttons");
    return line;
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
    if (!groups.getChildren().isEmpty()) {
      groups.getChildren().get(0).requestFocus();
    }
  }

  private void show(FormPage page) {
    heading.setText(page.heading());
    answer.setText(page.answer());
    store.setText(page.save());
    store.setDisable(!page.maySave());
    aside.setText(page.aside().isEmpty() ? "" : words.text("form.take-up", page.aside()));
    showGroups(page);
    strange.getChildren().setAll(page.strange().stream().map(this::strange).toList());
    differences.getChildren().clear();
    if (!page.differences().isEmpty()) {
      differences
          .getChildren()
          .add(Labels.wrapping(words.text("form.differs-heading"), "subheading"));
      page.differences()
          .forEach(text -> differences.getChildren().add(Labels.wrapping(text, "change")));
    }
    draw(page);
  }

  private void showGroups(FormPage page) {
    boolean fill = page.filled() != filled;
    List<String> keys = page.groups().stream().map(FormView::key).toList();
    List<String> before = shown;
    shown = keys;
    filled = page.filled();
    if (!keys.equals(before)) {
      boxes.keySet().retainAll(keys);
      List<Node> wanted = new ArrayList<>();
      for (Group group : page.groups()) {
        if (group.group().optional() && !wanted.contains(adding)) {
          wanted.add(adding);
        }
        wanted.add(box(group));
      }
      bring(wanted);
    }
    for (Group group : page.groups()) {
      boolean added = !before.contains(key(group));
      box(group).show(group, fill || added);
      if (added && !fill && !before.isEmpty()) {
        box(group).requestFocus();
      }
    }
    if (before.isEmpty() && isFocused()) {
      requestFocus();
    }
  }

  /** What stays is not touched, so that it keeps the keys. */
  private void bring(List<Node> wanted) {
    groups.getChildren().retainAll(wanted);
    for (int i = 0; i < wanted.size(); i++) {
      if (i >= groups.getChildren().size() || groups.getChildren().get(i) != wanted.get(i)) {
        groups.getChildren().add(i, wanted.get(i));
      }
    }
  }

  private GroupBox box(Group group) {
    return boxes.computeIfAbsent(
        key(group), key -> new GroupBox(group, words, model::type, model::remove, this::focused));
  }

  private static String key(Group group) {
    return group.group().id() + " " + group.group().named();
  }

  private Node strange(FormPage.Strange found) {
    Label sentence = Labels.wrapping(found.sentence(), "field-wrong");
    if (found.path().isEmpty()) {
      return sentence;
    }
    Button away = new Button(words.text("form.leave-out"));
    away.setAccessibleText(words.text("form.leave-out") + ": " + found.path());
    away.setMinWidth(USE_PREF_SIZE);
    away.setOnAction(event -> model.remove(found.path()));
    HBox line = new HBox(sentence, away);
    HBox.setHgrow(sentence, Priority.ALWAYS);
    line.getStyleClass().add("form-adding");
    return line;
  }

  private void focused(String path) {
    lit = path;
    if (PORTAL_FIELDS.contains(path)) {
      right.setVvalue(portal.getBoundsInParent().getMinY() / Math.max(1, outOfSight()));
    } else if (path.startsWith("building.")) {
      right.setVvalue(0);
    }
    FormPage now = model.page().get();
    if (now != null) {
      draw(now);
    }
  }

  /** How much higher the right half is than what is seen of it. */
  private double outOfSight() {
    return right.getContent().getBoundsInLocal().getHeight()
        - right.getViewportBounds().getHeight();
  }

  private void draw(FormPage page) {
    BuildingShape shape = page.shape();
    boolean hasPlan = shape.spanMetres().isPresent() || shape.lengthMetres().isPresent();
    boolean hasPortal = shape.spanMetres().isPresent() || shape.eaveHeightMetres().isPresent();
    seen(plan, hasPlan);
    seen(portal, hasPortal);
    noPlan.setText(hasPlan ? "" : page.spokenPlan());
    noPortal.setText(hasPortal ? "" : page.spokenPortal());
    plan.paint(
        page.spokenPlan(),
        (graphics, palette) -> paint(graphics, palette, PlanSheet::of, page.shape()));
    portal.paint(
        page.spokenPortal(),
        (graphics, palette) -> paint(graphics, palette, PortalSheet::of, page.shape()));
  }

  private static void seen(Node node, boolean visible) {
    node.setVisible(visible);
    node.setManaged(visible);
  }

  /** Draws a sheet of a size in drawing units. */
  @FunctionalInterface
  private interface Sheets {
    Picture of(BuildingShape shape, Words words, String lit, double width, double height);
  }

  /** As many drawing units as make the drawing's letters those of the screen. */
  private void paint(
      GraphicsContext graphics, Palette palette, Sheets sheets, BuildingShape shape) {
    double unit = palette.em(1) / Mark.FONT_SIZE;
    double width = graphics.getCanvas().getWidth() / unit;
    double height = graphics.getCanvas().getHeight() / unit;
    new PicturePainter(sheets.of(shape, words, lit, width, height), graphics, palette).paint();
  }
}
