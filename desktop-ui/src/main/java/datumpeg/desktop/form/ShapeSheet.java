package datumpeg.desktop.form;

import datumpeg.analysis.report.drawing.Mark;
import datumpeg.desktop.text.Words;
import java.util.List;

/** What the drawings of a shape have in common: the sheet, its words, what is being typed. */
abstract class ShapeSheet {
  /** From one line of words to the next. */
  static final double LINE = Mark.FONT_SIZE * 1.5;

  final BuildingShape shape;
  final Words words;
  final Sheet sheet;
  private final String lit;

  /**
   * An empty sheet of a size in drawing units.
   *
   * @param lit the path of the field that is being typed into
   */
  ShapeSheet(BuildingShape shape, Words words, String lit, double width, double height) {
    this.shape = shape;
    this.words = words;
    this.lit = lit;
    this.sheet = new Sheet(width, height);
  }

  /** Whether one of these fields is being typed into. */
  final boolean isLit(String... paths) {
    return List.of(paths).contains(lit);
  }

  /** Whether a field within this is being typed into. */
  final boolean isLitIn(String path) {
    return lit.startsWith(path);
  }

  final String told(double metres) {
    return words.figures().lengths().display().dimension(metres);
  }
}
