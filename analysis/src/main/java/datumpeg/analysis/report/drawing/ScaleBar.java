package datumpeg.analysis.report.drawing;

import datumpeg.analysis.report.writing.LengthFigures;

/** A bar that shows how long a deviation is drawn. */
final class ScaleBar {
  private static final double LONGEST_UNITS = 80;

  private ScaleBar() {}

  /**
   * Draws the bar below everything drawn so far.
   *
   * @param unitsPerMetre drawing units for a metre of deviation
   * @param of what it measures: "deviation", "lean"
   */
  static void draw(Sketch sketch, double unitsPerMetre, LengthFigures figures, String of) {
    double perUnit = unitsPerMetre * figures.unitMetres();
    double metres = RoundSteps.atMost(LONGEST_UNITS / perUnit) * figures.unitMetres();
    double length = metres * unitsPerMetre;
    double y = sketch.bottom() + 26;
    Spot from = new Spot(30, y);
    Spot to = from.moved(length, 0);
    sketch.line(Ink.FOUND, from, to);
    sketch.line(Ink.THIN, from.moved(0, -5), from.moved(0, 5));
    sketch.line(Ink.THIN, to.moved(0, -5), to.moved(0, 5));
    sketch.words(
        to.moved(10, 4.5), Anchor.START, Sketch.Weight.REGULAR, figures.step(metres) + " of " + of);
  }
}
