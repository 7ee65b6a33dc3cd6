package datumpeg.desktop.app;

import datumpeg.desktop.background.WorkState;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.WorkBar;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The frame around the screens: which one is shown, which record, and whether it is followed. */
final class WindowView extends BorderPane {
  private static final double LEAST_EM_FOR_THE_RECORD = 62;

  private final WindowViewModel model;
  private final Map<Screen, ScreenPart> parts = new EnumMap<>(Screen.class);
  private final Map<Screen, ToggleButton> buttons = new EnumMap<>(Screen.class);
  private final ScrollPane middle = new ScrollPane();
  private final WorkBar workBar;

  WindowView(WindowViewModel model, List<ScreenPart> parts, Runnable cancelWork) {
    this.model = model;
    parts.forEach(part -> this.parts.put(part.screen(), part));
    this.workBar = new WorkBar(model.words(), cancelWork);
    getStyleClass().add("window");
    middle.getStyleClass().add("screen-scroll");
    middle.setFitToWidth(true);
    middle.setFitToHeight(true);
    middle.setFocusTraversable(false);
    setCenter(middle);
    setBottom(workBar);
    setTop(new VBox(header(), sentence("trouble"), sentence("settings-said")));
    addEventFilter(KeyEvent.KEY_PRESSED, this::chooseByKey);
    model.screen().addListener((property, before, screen) -> show(screen));
    show(model.screen().get());
  }

  /** Puts a bar below every screen. */
  void below(Node bar) {
    setBottom(new VBox(bar, workBar));
  }

  /** What is being done for long. */
  void show(WorkState state) {
    workBar.show(state);
  }

  private Label sentence(String id) {
    Label sentence = Labels.vanishing("trouble");
    sentence.setId(id);
    sentence.setMaxWidth(Double.MAX_VALUE);
    sentence.textProperty().bind(id.equals("trouble") ? model.trouble() : model.settingsTrouble());
    return sentence;
  }

  private HBox header() {
    FlowPane choice = new FlowPane();
    choice.getStyleClass().add("screen-choice");
    parts.keySet().forEach(screen -> choice.getChildren().add(button(screen)));
    HBox.setHgrow(choice, Priority.ALWAYS);
    HBox header = new HBox(choice, record());
    header.getStyleClass().add("header");
    return header;
  }

  private VBox record() {
    Label file = new Label();
    file.getStyleClass().add("record-file");
    file.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    file.textProperty().bind(model.file());
    file.setOnMouseEntered(event -> file.setTooltip(new Tooltip(model.file().get())));
    Label live = Labels.wrapping("", "record-live");
    live.setId("live");
    live.textProperty().bind(model.live());
    VBox record = new VBox(file, live);
    record.getStyleClass().add("record");
    record.setMinWidth(Region.USE_PREF_SIZE);
    // In a window too narrow for its letters the screens' buttons come first; trouble is said
    // below.
    record
        .visibleProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> getWidth() >= LEAST_EM_FOR_THE_RECORD * live.getFont().getSize(),
                widthProperty(),
                live.fontProperty()));
    record.managedProperty().bind(record.visibleProperty());
    return record;
  }

  private ToggleButton button(Screen screen) {
    String name = model.words().text(screen.key());
    ToggleButton button = new ToggleButton(name);
    button.setId("screen-" + screen.id());
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnMouseEntered(event -> tellKey(button, screen));
    button.setOnAction(
        event -> {
          button.setSelected(true);
          model.screen().set(screen);
        });
    buttons.put(screen, button);
    return button;
  }

  /** A tooltip is made when the mouse first comes near: the start of the window need not wait. */
  private static void tellKey(ToggleButton button, Screen screen) {
    if (button.getTooltip() == null) {
      button.setTooltip(new Tooltip(key(screen).getDisplayText()));
    }
  }

  private void show(Screen screen) {
    buttons.forEach((each, button) -> button.setSelected(each == screen));
    ScreenPart part = parts.get(screen);
    if (part != null) {
      Node shown = part.node();
      middle.setContent(shown);
      shown.requestFocus();
    }
  }

  private void chooseByKey(KeyEvent event) {
    if (!event.isShortcutDown()) {
      return;
    }
    for (Screen screen : parts.keySet()) {
      if (key(screen).match(event)) {
        model.screen().set(screen);
        event.consume();
      }
    }
    int step = textStep(event.getCode());
    if (step != 0) {
      model.textStep(step);
      event.consume();
    }
  }

  private static int textStep(KeyCode code) {
    return switch (code) {
      case PLUS, ADD, EQUALS -> 1;
      case MINUS, SUBTRACT -> -1;
      default -> 0;
    };
  }

  private static KeyCombination key(Screen screen) {
    return new KeyCodeCombination(screen.digit(), KeyCombination.SHORTCUT_DOWN);
  }
}
