package datumpeg.desktop.app;

import datumpeg.desktop.control.Labels;
import java.util.EnumMap;
import java.util.Map;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The frame around the screens: which one is shown, which record, and whether it is followed. */
final class WindowView extends BorderPane {
  private final WindowViewModel model;
  private final Map<Screen, Node> screens;
  private final Map<Screen, ToggleButton> buttons = new EnumMap<>(Screen.class);

  WindowView(WindowViewModel model, Map<Screen, Node> screens) {
    this.model = model;
    this.screens = new EnumMap<>(screens);
    getStyleClass().add("window");
    Label trouble = Labels.vanishing("trouble");
    trouble.setId("trouble");
    trouble.setMaxWidth(Double.MAX_VALUE);
    trouble.textProperty().bind(model.trouble());
    setTop(new VBox(header(), trouble));
    addEventFilter(KeyEvent.KEY_PRESSED, this::chooseByKey);
    model.screen().addListener((property, before, screen) -> show(screen));
    show(model.screen().get());
  }

  private HBox header() {
    HBox choice = new HBox();
    choice.getStyleClass().add("screen-choice");
    for (Screen screen : Screen.values()) {
      choice.getChildren().add(button(screen));
    }
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    Label file = new Label();
    file.getStyleClass().add("record-file");
    file.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    file.textProperty().bind(model.file());
    Tooltip whole = new Tooltip();
    whole.textProperty().bind(model.file());
    file.setTooltip(whole);
    Label live = new Label();
    live.setId("live");
    live.getStyleClass().add("record-live");
    live.textProperty().bind(model.live());
    VBox record = new VBox(file, live);
    record.getStyleClass().add("record");
    HBox header = new HBox(choice, gap, record);
    header.getStyleClass().add("header");
    return header;
  }

  private ToggleButton button(Screen screen) {
    String name = model.words().text(screen.key());
    ToggleButton button = new ToggleButton(name);
    button.setId("screen-" + screen.id());
    button.setTooltip(new Tooltip(key(screen).getDisplayText()));
    button.setOnAction(
        event -> {
          button.setSelected(true);
          model.screen().set(screen);
        });
    buttons.put(screen, button);
    return button;
  }

  private void show(Screen screen) {
    buttons.forEach((each, button) -> button.setSelected(each == screen));
    Node shown = screens.get(screen);
    setCenter(shown);
    if (shown != null) {
      shown.requestFocus();
    }
  }

  private void chooseByKey(KeyEvent event) {
    for (Screen screen : Screen.values()) {
      if (key(screen).match(event)) {
        model.screen().set(screen);
        event.consume();
      }
    }
  }

  private static KeyCombination key(Screen screen) {
    return new KeyCodeCombination(screen.digit(), KeyCombination.SHORTCUT_DOWN);
  }
}
