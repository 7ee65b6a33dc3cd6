package datumpeg.desktop.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.app.HeadlessToolkit;
import datumpeg.desktop.control.ExportButtons;
import datumpeg.desktop.source.InventedCrews;
import datumpeg.desktop.text.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Pattern;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CompareExportTest {
  private static final Pattern RING = Pattern.compile("<circle[^>]* fill=\"none\"");

  @TempDir Path folder;

  private final ExportButtons export;

  CompareExportTest() {
    HeadlessToolkit.start();
    export =
        HeadlessToolkit.on(
            () -> {
              CompareViewModel model =
                  new CompareViewModel(Words.of(Locale.ROOT), Runnable::run, Runnable::run);
              model.show(InventedCrews.state(24));
              StripList strips = new StripList();
              new Scene(strips, 800, 300);
              strips.resize(800, 300);
              strips.show(model.page().get());
              strips.layout();
              return new ExportButtons(
                  model.words(), "exported", new ShownStrips(model, strips, () -> "Crew: Blue"));
            });
  }

  private String told() {
    return ((Label) export.lookup("#exported")).getText();
  }

  private void awaitSaved(Path file) {
    HeadlessToolkit.until("it is told: " + file, () -> told().equals("Saved as " + file + "."));
  }

  @Test
  void pictureAndNumbersAreWritten() throws IOException {
    Path svg = folder.resolve("comparison.svg");
    HeadlessToolkit.run(() -> export.writeSvg(svg));
    awaitSaved(svg);
    String picture = Files.readString(svg);
    assertTrue(picture.contains("<title>Crew: Blue. Amber: 12 jobs"), picture);
    assertTrue(picture.contains(">Amber (12 jobs, 24 outcomes)</text>"), picture);
    assertEquals(24, RING.matcher(picture).results().count(), "a ring for each job's mean");
    Path png = folder.resolve("comparison.png");
    HeadlessToolkit.run(() -> export.writePng(png));
    awaitSaved(png);
    assertEquals(800, ImageIO.read(png.toFile()).getWidth());
    Path csv = folder.resolve("comparison.csv");
    HeadlessToolkit.run(() -> export.writeCsv(csv));
    awaitSaved(csv);
    assertEquals(25, Files.readAllLines(csv).size());
  }
}
