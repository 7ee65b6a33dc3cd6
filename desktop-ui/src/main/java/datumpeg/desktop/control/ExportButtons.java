package datumpeg.desktop.control;

import datumpeg.desktop.text.Words;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/**
 * Buttons that take elsewhere what is shown: its picture as SVG or PNG, its numbers as CSV; below
 * them what became of the last file.
 *
 * <p>The JavaFX thread only.
 */
public final class ExportButtons extends VBox {
  private final Words words;
  private final Shown shown;
  private final FileExport files;
  private final FlowPane line = new FlowPane();

  /** What is taken elsewhere, as it is shown when a button is pressed. */
  public interface Shown {
    /** The beginning of the file's name. */
    String name();

    /** What the picture in pixels is of. */
    Node node();

    /** The drawing, in the light theme, as large as it is shown. */
    String svg();

    /** The numbers; made on the writing thread. */
    Supplier<String> csv();
  }

  /**
   * The buttons.
   *
   * @param id of the sentence on the last file
   */
  public ExportButtons(Words words, String id, Shown shown) {
    this.words = words;
    this.shown = shown;
    this.files = new FileExport(words, shown.node());
    Label told = Labels.vanishing("hint");
    told.setId(id);
    told.textProperty().bind(files.told());
    line.getStyleClass().add("chart-buttons");
    add("export.svg", () -> ask("svg", this::writeSvg));
    add("export.png", () -> ask("png", this::writePng));
    add("export.csv", () -> ask("csv", this::writeCsv));
    getChildren().addAll(line, told);
  }

  /** Puts other buttons before its own. */
  public void putFirst(Button... buttons) {
    line.getChildren().addAll(0, List.of(buttons));
  }

  private void add(String key, Runnable action) {
    Button button = new Button(words.text(key));
    button.setOnAction(event -> action.run());
    line.getChildren().add(button);
  }

  private void ask(String ending, Consumer<Path> save) {
    files.ask(shown.name(), ending, save);
  }

  /** Writes the drawing. */
  public void writeSvg(Path file) {
    String picture = shown.svg();
    files.write(file, () -> picture.getBytes(StandardCharsets.UTF_8));
  }

  /** Writes what is seen. */
  public void writePng(Path file) {
    files.writePng(file, shown.node());
  }

  /** Writes the numbers. */
  public void writeCsv(Path file) {
    Supplier<String> table = shown.csv();
    files.write(file, () -> table.get().getBytes(StandardCharsets.UTF_8));
  }
}
