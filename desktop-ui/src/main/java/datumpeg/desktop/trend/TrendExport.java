package datumpeg.desktop.trend;

import datumpeg.desktop.background.LatestAnswer;
import datumpeg.desktop.chart.LongChart;
import datumpeg.desktop.text.Words;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.concurrent.Callable;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.stage.FileChooser;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;

/**
 * Takes a chart elsewhere: its picture as SVG or PNG, its numbers as CSV. Files are written off the
 * JavaFX thread, whole or not at all.
 */
final class TrendExport {
  private final JobsTrendViewModel model;
  private final LongChart chart;
  private final Words words;
  private final Executor writer;
  private final ReadOnlyStringWrapper told = new ReadOnlyStringWrapper("");

  TrendExport(JobsTrendViewModel model, LongChart chart) {
    this.model = model;
    this.chart = chart;
    this.words = model.words();
    this.writer = LatestAnswer.worker("trend export");
  }

  /** What became of the last export. */
  ReadOnlyStringProperty told() {
    return told.getReadOnlyProperty();
  }

  void saveSvg() {
    asked("svg", this::writeSvg);
  }

  void savePng() {
    asked("png", this::writePng);
  }

  void saveCsv() {
    asked("csv", this::writeCsv);
  }

  void writeSvg(Path file) {
    String picture = chart.svg();
    write(file, () -> picture.getBytes(StandardCharsets.UTF_8));
  }

  void writePng(Path file) {
    WritableImage picture = chart.snapshot(null, null);
    write(file, () -> png(picture));
  }

  void writeCsv(Path file) {
    JobsTrendPage page = model.page().get();
    write(file, () -> page.csv().text().getBytes(StandardCharsets.UTF_8));
  }

  private void asked(String ending, Consumer<Path> save) {
    FileChooser files = new FileChooser();
    files.setTitle(words.text("trend.save-title"));
    files.setInitialFileName("trend." + ending);
    @Nullable File file = files.showSaveDialog(chart.getScene().getWindow());
    if (file != null) {
      save.accept(file.toPath());
    }
  }

  private void write(Path file, Callable<byte[]> content) {
    writer.execute(
        () -> {
          String sentence = written(file, content);
          Platform.runLater(() -> told.set(sentence));
        });
  }

  private String written(Path file, Callable<byte[]> content) {
    Path unfinished = file.resolveSibling(file.toFile().getName() + ".unfinished");
    try {
      Files.write(unfinished, content.call());
      Files.move(unfinished, file, StandardCopyOption.REPLACE_EXISTING);
      return words.text("trend.saved", file);
    } catch (Exception e) { // the top of this piece of work: the user is told
      unfinished.toFile().delete();
      return words.text("trend.not-saved", file, String.valueOf(e.getMessage()));
    }
  }

  private static byte[] png(WritableImage picture) throws IOException {
    int width = (int) picture.getWidth();
    int height = (int) picture.getHeight();
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
    PixelReader pixels = picture.getPixelReader();
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        image.setRGB(x, y, pixels.getArgb(x, y));
      }
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(image, "png", bytes);
    return bytes.toByteArray();
  }
}
