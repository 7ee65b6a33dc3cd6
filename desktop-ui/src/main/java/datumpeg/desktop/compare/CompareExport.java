package datumpeg.desktop.compare;

import datumpeg.desktop.chart.SvgPen;
import datumpeg.desktop.control.Drawing;
import datumpeg.desktop.control.FileExport;
import datumpeg.desktop.control.Palette;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import javafx.beans.property.ReadOnlyStringProperty;

/** Takes a comparison elsewhere: its picture as SVG or PNG, its numbers as CSV. */
final class CompareExport {
  private static final double LEAST_WIDTH = 400;

  private final CompareViewModel model;
  private final Drawing strips;
  private final FileExport files;

  CompareExport(CompareViewModel model, Drawing strips) {
    this.model = model;
    this.strips = strips;
    this.files = new FileExport(model.words(), strips);
  }

  /** What became of the last export. */
  ReadOnlyStringProperty told() {
    return files.told();
  }

  void saveSvg() {
    files.ask("comparison", "svg", this::writeSvg);
  }

  void savePng() {
    files.ask("comparison", "png", this::writePng);
  }

  void saveCsv() {
    files.ask("comparison", "csv", this::writeCsv);
  }

  /** In the light theme, as wide as it is shown. */
  void writeSvg(Path file) {
    ComparePage page = model.page().get();
    double width = Math.max(LEAST_WIDTH, strips.getWidth());
    Palette palette = Palette.light();
    double height = palette.em(StripPainter.heightInLetters(page.strips().size()));
    SvgPen pen = new SvgPen(width, height, palette);
    new StripPainter(page, pen).paint();
    String picture = pen.picture(page.spoken());
    files.write(file, () -> picture.getBytes(StandardCharsets.UTF_8));
  }

  void writePng(Path file) {
    files.writePng(file, strips);
  }

  void writeCsv(Path file) {
    ComparePage page = model.page().get();
    files.write(file, () -> page.csv().get().getBytes(StandardCharsets.UTF_8));
  }
}
