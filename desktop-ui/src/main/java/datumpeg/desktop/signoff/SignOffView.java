package datumpeg.desktop.signoff;

import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.StandingMark;
import datumpeg.desktop.signoff.SignOffPage.Item;
import datumpeg.desktop.signoff.SignOffPage.StageChoice;
import datumpeg.desktop.text.Words;
import java.io.File;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import org.jspecify.annotations.Nullable;

/** The check list of a stage, with the lines on which it is signed and accepted. */
public final class SignOffView extends VBox {
  private static final List<String> PICTURES =
      List.of("*.jpg", "*.jpeg", "*.png", "*.heic", "*.JPG", "*.JPEG", "*.PNG", "*.HEIC");

  private final SignOffViewModel model;
  private final Words words;
  private final Label title = Labels.wrapping("", "heading");
  private final FlowPane stages = new FlowPane();
  private final Label sentence = Labels.vanishing("sentence");
  private final Label answer = Labels.vanishing("answer");
  private final Label said = Labels.vanishing("sentence");
  private final TextField by;
  private final TextField reference;
  private final TextField why;
  private final Button sign = new Button();
  private final Button attach = new Button();
  private final Label photos = Labels.vanishing("hint");
  private final VBox items = new VBox();
  private final VBox cautions = new VBox();
  private final VBox body;

  public SignOffView(SignOffViewModel model) {
    this.model = model;
    this.words = model.words();
    this.by = field("signoff.by");
    this.reference = field("signoff.reference");
    this.why = field("signoff.why");
    getStyleClass().addAll("screen", "signoff-screen");
    stages.getStyleClass().add("stage-choice");
    answer.setId("signoff-answer");
    said.setId("signoff-said");
    said.textProperty().bind(model.said());
    sign.setText(words.text("signoff.sign"));
    sign.setId("signoff-sign");
    sign.setOnAction(event -> model.sign(by.getText()));
    attach.setText(words.text("signoff.attach"));
    attach.setId("signoff-attach");
    attach.setMinWidth(USE_PREF_SIZE);
    attach.setOnAction(event -> choosePhoto());
    photos.setId("signoff-photos");
    items.getStyleClass().add("signoff-items");
    cautions.getStyleClass().add("signoff-cautions");
    body =
        new VBox(
            answer,
            Labels.wrapping(words.text("signoff.cautions"), "subheading"),
            cautions,
            lines(),
            photos,
            said,
            items);
    body.getStyleClass().add("findings-body");
    body.managedProperty().bind(sentence.managedProperty().not());
    body.visibleProperty().bind(body.managedProperty());
    getChildren().addAll(title, stages, sentence, body);
    model.page().addListener((property, before, page) -> show(page));
    show(model.page().get());
  }

  /** The name takes the keys. */
  @Override
  public void requestFocus() {
    by.requestFocus();
  }

  private TextField field(String key) {
    TextField field = new TextField();
    field.setId(key.replace('.', '-'));
    field.setAccessibleText(words.text(key));
    field.setPrefColumnCount(16);
    return field;
  }

  private Node lines() {
    FlowPane lines =
        new FlowPane(
            named("signoff.by", by),
            sign,
            named("signoff.reference", reference),
            named("signoff.why", why),
            attach);
    lines.getStyleClass().add("signoff-lines");
    return lines;
  }

  private void choosePhoto() {
    FileChooser files = new FileChooser();
    files.setTitle(words.text("signoff.attach-title"));
    files
        .getExtensionFilters()
        .addAll(
            new FileChooser.ExtensionFilter(words.text("signoff.pictures"), PICTURES),
            new FileChooser.ExtensionFilter(words.text("signoff.all-files"), "*.*"));
    @Nullable File photo = files.showOpenDialog(getScene().getWindow());
    if (photo != null) {
      model.attach(photo.toPath(), by.getText());
    }
  }

  private Node named(String key, TextField field) {
    Label label = new Label(words.text(key));
    label.setLabelFor(field);
    label.setMinWidth(USE_PREF_SIZE);
    HBox named = new HBox(label, field);
    named.getStyleClass().add("choosers");
    return named;
  }

  private void show(SignOffPage page) {
    title.setText(page.title());
    sentence.setText(page.sentence());
    answer.setText(page.answer());
    sign.setDisable(!page.maySign());
    photos.setText(
        page.photos().isEmpty()
            ? ""
            : words.text("signoff.photos", String.join(", ", page.photos())));
    stages.getChildren().setAll(page.stages().stream().map(this::stage).toList());
    items.getChildren().setAll(page.items().stream().map(this::item).toList());
    cautions
        .getChildren()
        .setAll(page.cautions().stream().map(text -> Labels.wrapping(text, "note")).toList());
  }

  private Node stage(StageChoice choice) {
    ToggleButton button = new ToggleButton(choice.name() + "\n" + choice.state());
    button.setSelected(choice.chosen());
    button.setAccessibleText(choice.name() + ": " + choice.state());
    button.setOnAction(event -> model.chooseStage(choice.stage()));
    return button;
  }

  private Node item(Item item) {
    VBox texts =
        new VBox(
            Labels.wrapping(item.title() + ": " + item.words(), "cause-sentence"),
            Labels.wrapping(item.found(), "cause-action"));
    if (!item.accepted().isEmpty()) {
      texts.getChildren().add(Labels.wrapping(item.accepted(), "cause-symptoms"));
    }
    HBox.setHgrow(texts, Priority.ALWAYS);
    HBox card = new HBox(new StandingMark(item.mark()), texts);
    card.getStyleClass().add("cause-card");
    if (item.open()) {
      Button accept = new Button(words.text("signoff.accept"));
      accept.setAccessibleText(words.text("signoff.accept") + ": " + item.title());
      accept.setMinWidth(USE_PREF_SIZE);
      accept.setOnAction(
          event ->
              model.accept(
                  item.key(), new Desk.Acceptor(by.getText(), reference.getText(), why.getText())));
      card.getChildren().add(accept);
    }
    return card;
  }
}
