package datumpeg.desktop.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.app.HeadlessToolkit;
import datumpeg.desktop.control.ExportButtons;
import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.text.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobTrendExportTest {
  @TempDir Path folder;

  private final ExportButtons export;

  JobTrendExportTest() {
    HeadlessToolkit.start();
    export =
        HeadlessToolkit.on(
            () -> {
              TrendViewModel model = new TrendViewModel(Words.of(Locale.ROOT));
              model.show(InventedJobs.state(InventedJobs.reduced()));
              model.choose(InventedJobs.ID);
              TrendPage page = model.page().get();
              TargetChart chart = new TargetChart(model.words(), page);
              new Scene(chart, 800, 500);
              chart.resize(800, 500);
              chart.show(page);
              chart.layout();
              return new ExportButtons(
                  model.words(),
                  "exported",
                  new ShownTrend(chart, () -> () -> TargetTable.csv(page, model.words())));
            });
  }

  private String told() {
    return ((Label) export.lookup("#exported")).getText();
  }

  private void awaitSaved(Path file) {
    HeadlessToolkit.until("it is told: " + file, () -> told().equals("Saved as " + file + "."));
  }

  @Test
  void pictureAndNumbersAreWritten() throws Exception {
    Path svg = folder.resolve("trend.svg");
    HeadlessToolkit.run(() -> export.writeSvg(svg));
    awaitSaved(svg);
    String picture = Files.readString(svg);
    DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(svg.toFile());
    assertTrue(picture.contains(">Tightening, round 2</text>"), picture);
    assertEquals(
        3,
        Pattern.compile("<path[^>]*evenodd").matcher(picture).results().count(),
        "a shape for the standing of each point");
    Path png = folder.resolve("trend.png");
    HeadlessToolkit.run(() -> export.writePng(png));
    awaitSaved(png);
    assertEquals(800, ImageIO.read(png.toFile()).getWidth());
  }

  @Test
  void tableHasARowForEachPoint() throws IOException {
    Path csv = folder.resolve("trend.csv");
    HeadlessToolkit.run(() -> export.writeCsv(csv));
    awaitSaved(csv);
    List<String> lines = Files.readAllLines(csv);
    assertEquals(4, lines.size());
    assertEquals(
        "check,target,measured_at,unit,deviation,expanded_uncertainty,lower,upper,standing",
        lines.get(0));
    assertEquals(
        "column-plumb,A3/across,\"Lift, round 1\",mm,13.4,2.3,-7.2,7.2,nonconforming",
        lines.get(1));
  }
}
