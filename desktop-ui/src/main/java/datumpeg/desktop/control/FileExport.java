package datumpeg.desktop.control;

import datumpeg.desktop.background.LatestAnswer;
import datumpeg.desktop.text.Words;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.concurrent.Callable;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.scene.Node;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.stage.FileChooser;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;

/**
 * Takes something that is shown elsewhere, as a file that the user names. Files are written off the
 * JavaFX thread, whole or not at all.
 *
 * <p>The JavaFX thread only.
 */
public final class FileExport {
  private final Words words;
  private final Node owner;
  private final Executor writer = LatestAnswer.worker("export");
  private final ReadOnlyStringWrapper told = new ReadOnlyStringWrapper("");

  /**
   * Nothing exported yet.
   *
   * @param owner in whose window the user is asked
   */
  public FileExport(Words words, Node owner) {
    this.words = words;
    this.owner = owner;
  }

  /** What became of the last export. */
  public ReadOnlyStringProperty told() {
    return told.getReadOnlyProperty();
  }

  /** Asks for a file, a name being proposed; if one is named, it is saved to. */
  public void ask(String name, String ending, Consumer<Path> save) {
    FileChooser files = new FileChooser();
    files.setTitle(words.text("export.title"));
    files.setInitialFileName(name + "." + ending);
    @Nullable File file = files.showSaveDialog(owner.getScene().getWindow());
    if (file != null) {
      save.accept(file.toPath());
    }
  }

  /**
   * Writes a file.
   *
   * @param content made on the writing thread; what it throws is told
   */
  public void write(Path file, Callable<byte[]> content) {
    writer.execute(
        () -> {
          String sentence = written(file, content);
          Platform.runLater(() -> told.set(sentence));
        });
  }

  /** Writes what a node shows now as a picture. */
  public void writePng(Path file, Node shown) {
    WritableImage picture = shown.snapshot(null, null);
    write(file, () -> png(picture));
  }

  private String written(Path file, Callable<byte[]> content) {
    Path unfinished = file.resolveSibling(file.toFile().getName() + ".unfinished");
    try {
      Files.write(unfinished, content.call());
      Files.move(unfinished, file, StandardCopyOption.REPLACE_EXISTING);
      return words.text("export.saved", file);
    } catch (Exception e) { // the top of this piece of work: the user is told
      unfinished.toFile().delete();
      return words.text("export.not-saved", file, String.valueOf(e.getMessage()));
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
