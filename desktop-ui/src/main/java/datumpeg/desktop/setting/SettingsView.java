package datumpeg.desktop.setting;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.desktop.control.Labels;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Theme, size of letters, units. */
public final class SettingsView extends VBox {
  private static final List<Integer> TEXT_SIZES = List.of(80, 100, 120, 150, 175, 200);

  private final SettingsViewModel model;
  private final FlowPane themes;

  public SettingsView(SettingsViewModel model) {
    this.model = model;
    getStyleClass().addAll("screen", "settings-screen");
    themes = choice("theme", List.of(Theme.values()), Theme::id, Settings::theme, model::theme);
    Label trouble = Labels.vanishing("sentence");
    trouble.setId("settings-trouble");
    trouble.setText(model.trouble());
    getChildren()
        .addAll(
            Labels.wrapping(model.words().text("screen.settings"), "heading"),
            trouble,
            group("theme", themes),
            group(
                "text",
                choice("text", TEXT_SIZES, String::valueOf, Settings::textPercent, model::text)),
            group(
                "units",
                choice(
                    "units",
                    List.of(LengthDisplay.values()),
                    unit -> unit.name().toLowerCase(Locale.ROOT),
                    Settings::units,
                    model::units)),
            Labels.wrapping(model.words().text("settings.hint"), "hint"));
  }

  /** The chosen theme takes the keys. */
  @Override
  public void requestFocus() {
    themes.getChildren().get(0).requestFocus();
  }

  private VBox group(String key, Node choice) {
    VBox group =
        new VBox(Labels.wrapping(model.words().text("settings." + key), "subheading"), choice);
    group.getStyleClass().add("settings-group");
    return group;
  }

  private <T> FlowPane choice(
      String key,
      List<T> values,
      Function<T, String> id,
      Function<Settings, T> chosen,
      Consumer<T> choose) {
    FlowPane buttons = new FlowPane();
    buttons.getStyleClass().add("settings-choice");
    ToggleGroup one = new ToggleGroup();
    for (T value : values) {
      ToggleButton button = new ToggleButton(words(key, id.apply(value)));
      button.setId("settings-" + key + "-" + id.apply(value));
      button.setAccessibleText(model.words().text("settings." + key) + ": " + button.getText());
      button.setToggleGroup(one);
      button.setOnAction(event -> choose.accept(value));
      model
          .settings()
          .addListener(
              (property, before, now) -> button.setSelected(chosen.apply(now).equals(value)));
      button.setSelected(chosen.apply(model.now()).equals(value));
      buttons.getChildren().add(button);
    }
    return buttons;
  }

  private String words(String key, String id) {
    return key.equals("text")
        ? model.words().text("settings.text.size", id)
        : model.words().text("settings." + key + "." + id);
  }
}
