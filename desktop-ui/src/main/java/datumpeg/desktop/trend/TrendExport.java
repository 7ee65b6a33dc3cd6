package datumpeg.desktop.trend;

import datumpeg.desktop.chart.LongChart;
import datumpeg.desktop.control.FileExport;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import javafx.beans.property.ReadOnlyStringProperty;

/** Takes a chart elsewhere: its picture as SVG or PNG, its numbers as CSV. */
final class TrendExport {
  private final JobsTrendViewModel model;
  private final LongChart chart;
  private final FileExport files;

  TrendExport(JobsTrendViewModel model, LongChart chart) {
    this.model = model;
    this.chart = chart;
    this.files = new FileExport(model.words(), chart);
  }

  /** What became of the last export. */
  ReadOnlyStringProperty told() {
    return files.told();
  }

  void saveSvg() {
    files.ask("trend", "svg", this::writeSvg);
  }

  void savePng() {
    files.ask("trend", "png", this::writePng);
  }

  void saveCsv() {
    files.ask("trend", "csv", this::writeCsv);
  }

  void writeSvg(Path file) {
    String picture = chart.svg();
    files.write(file, () -> picture.getBytes(StandardCharsets.UTF_8));
  }

  void writePng(Path file) {
    files.writePng(file, chart);
  }

  void writeCsv(Path file) {
    JobsTrendPage page = model.page().get();
    files.write(file, () -> page.csv().text().getBytes(StandardCharsets.UTF_8));
  }
}
