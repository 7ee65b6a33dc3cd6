package datumpeg.desktop.trend;

import datumpeg.bridge.exchange.WrittenTable;
import datumpeg.desktop.control.FileExport;
import datumpeg.desktop.text.Words;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import javafx.beans.property.ReadOnlyStringProperty;

/** Takes the trend of one target elsewhere: its picture as SVG or PNG, its numbers as CSV. */
final class JobTrendExport {
  private final Words words;
  private final TrendViewModel model;
  private final TargetChart chart;
  private final FileExport files;

  JobTrendExport(TrendViewModel model, TargetChart chart) {
    this.words = model.words();
    this.model = model;
    this.chart = chart;
    this.files = new FileExport(words, chart);
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

  /** In the light theme, as large as it is shown, and as much of it. */
  void writeSvg(Path file) {
    String picture = chart.svg();
    files.write(file, () -> picture.getBytes(StandardCharsets.UTF_8));
  }

  void writePng(Path file) {
    files.writePng(file, chart);
  }

  /** One row a point, in the units that are shown; numbers rounded half-even to 1e-6. */
  void writeCsv(Path file) {
    TrendPage page = model.page().get();
    WrittenTable table =
        new WrittenTable(
            List.of(
                "check",
                "target",
                "measured_at",
                "unit",
                "deviation",
                "expanded_uncertainty",
                "lower",
                "upper",
                "standing"));
    for (TrendPoint point : page.points()) {
      table.row(
          List.of(
              page.check(),
              page.target(),
              point.label(),
              page.unit(),
              number(OptionalDouble.of(point.deviation())),
              number(OptionalDouble.of(point.uncertainty())),
              number(point.lower()),
              number(point.upper()),
              words.standing(point.standing())));
    }
    files.write(file, () -> table.csv().getBytes(StandardCharsets.UTF_8));
  }

  private static String number(OptionalDouble value) {
    return value.isEmpty()
        ? ""
        : BigDecimal.valueOf(value.getAsDouble())
            .setScale(6, RoundingMode.HALF_EVEN)
            .stripTrailingZeros()
            .toPlainString();
  }
}
