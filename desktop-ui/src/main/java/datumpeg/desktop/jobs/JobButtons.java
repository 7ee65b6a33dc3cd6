package datumpeg.desktop.jobs;

import datumpeg.desktop.control.FileExport;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.text.Words;
import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.function.Supplier;
import javafx.beans.value.ObservableValue;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import org.jspecify.annotations.Nullable;

/** What can be done with the jobs, and what became of it. */
final class JobButtons extends VBox {
  private final Words words;
  private final JobActions actions;
  private final FileExport export;

  /** The buttons; two of them are for the job that is chosen in the list. */
  JobButtons(Words words, JobActions actions, ObservableValue<@Nullable JobCard> chosen) {
    this.words = words;
    this.actions = actions;
    this.export = new FileExport(words, this);
    Button change = button("jobs.change", () -> actions.change().accept(idOf(chosen::getValue)));
    Button save = button("jobs.export", () -> export(idOf(chosen::getValue)));
    for (Button each : new Button[] {change, save}) {
      each.setDisable(chosen.getValue() == null);
      chosen.addListener((property, before, card) -> each.setDisable(card == null));
    }
    FlowPane buttons =
        new FlowPane(
            button("jobs.new", actions.begin()),
            button("jobs.import", this::chooseFile),
            change,
            save);
    buttons.getStyleClass().add("chart-buttons");
    Label exported = Labels.vanishing("hint");
    exported.setId("jobs-exported");
    exported.textProperty().bind(export.told());
    getChildren().addAll(buttons, exported);
  }

  private static String idOf(Supplier<@Nullable JobCard> chosen) {
    JobCard card = chosen.get();
    return card == null ? "" : card.id();
  }

  private Button button(String key, Runnable action) {
    Button button = new Button(words.text(key));
    button.setId(key.replace('.', '-'));
    button.setMinWidth(USE_PREF_SIZE);
    button.setOnAction(event -> action.run());
    return button;
  }

  private void chooseFile() {
    FileChooser files = new FileChooser();
    files.setTitle(words.text("jobs.import"));
    @Nullable File file = files.showOpenDialog(getScene().getWindow());
    if (file != null) {
      actions.takeFile().accept(file.toPath());
    }
  }

  private void export(String job) {
    export.ask(job.replace('/', '-'), "toml", file -> write(file, job));
  }

  void write(Path file, String job) {
    export.write(
        file,
        () ->
            actions
                .file()
                .apply(job)
                .orElseThrow(() -> new IllegalStateException(words.text("jobs.no-export", job)))
                .getBytes(StandardCharsets.UTF_8));
  }
}
