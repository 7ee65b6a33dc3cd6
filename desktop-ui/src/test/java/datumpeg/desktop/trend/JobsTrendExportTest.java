package datumpeg.desktop.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.app.HeadlessToolkit;
import datumpeg.desktop.chart.LongChart;
import datumpeg.desktop.control.ExportButtons;
import datumpeg.desktop.source.InventedCrews;
import datumpeg.desktop.text.Words;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobsTrendExportTest {
  @TempDir Path folder;

  private final ExportButtons export;

  JobsTrendExportTest() {
    HeadlessToolkit.start();
    export =
        HeadlessToolkit.on(
            () -> {
              JobsTrendViewModel model =
                  new JobsTrendViewModel(Words.of(Locale.ROOT), Runnable::run, Runnable::run);
              LongChart chart = new LongChart();
              new Scene(chart, 800, 500);
              chart.applyCss();
              chart.resize(800, 500);
              chart.layout();
              model.want(true);
              model.show(InventedCrews.state(24));
              JobsTrendPage page = model.page().get();
              chart.show(page.points(), page.labels(), page.spoken());
              return new ExportButtons(
                  model.words(),
                  "exported",
                  new ShownTrend(chart, () -> model.page().get().csv()::text));
            });
  }

  private String told() {
    return ((Label) export.lookup("#exported")).getText();
  }

  private void awaitSaved(String beginning) {
    HeadlessToolkit.until("it is told: " + beginning, () -> told().startsWith(beginning));
  }

  @Test
  void pictureAndNumbersAreWritten() throws IOException {
    Path svg = folder.resolve("trend.svg");
    HeadlessToolkit.run(() -> export.writeSvg(svg));
    awaitSaved("Saved as " + svg);
    assertTrue(Files.readString(svg).contains("control limit"));
    Path png = folder.resolve("trend.png");
    HeadlessToolkit.run(() -> export.writePng(png));
    awaitSaved("Saved as " + png);
    BufferedImage picture = ImageIO.read(png.toFile());
    assertEquals(800, picture.getWidth());
    Path csv = folder.resolve("trend.csv");
    HeadlessToolkit.run(() -> export.writeCsv(csv));
    awaitSaved("Saved as " + csv);
    assertEquals(49, Files.readAllLines(csv).size());
  }

  @Test
  void whatCannotBeWrittenIsSaid() {
    HeadlessToolkit.run(() -> export.writeCsv(folder.resolve("none/trend.csv")));
    awaitSaved("It could not be saved as ");
  }
}
