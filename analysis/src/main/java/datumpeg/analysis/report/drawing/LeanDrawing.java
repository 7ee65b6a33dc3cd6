package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.writing.LengthFigures;
import java.util.List;
import java.util.Optional;

/**
 * Columns in elevation, each leaning as it was found: along the building as seen from outside side
 * A, and across it with the lean toward B drawn to the right, which is how one looks from end n.
 */
public final class LeanDrawing {
  private static final double LEFT = 60;
  private static final double STRIP = 112;
  private static final double TALL = 62;

  private final SetOut setOut;
  private final List<Outcome> leans;
  private final LengthFigures figures;
  private final double unitsPerMetre;
  private final Sketch sketch = new Sketch(Drawing.PAGE_WIDTH, "Columns in elevation");

  private LeanDrawing(SetOut setOut, List<Outcome> leans, LengthFigures figures) {
    this.setOut = setOut;
    this.leans = leans;
    this.figures = figures;
    double largest =
        leans.stream()
            .mapToDouble(
                lean ->
                    Math.max(Math.abs(lean.deviation()) + lean.expandedUncertainty(), limit(lean)))
            .max()
            .orElse(0);
    int frames = setOut.building().portalFrameCount();
    double room = Math.min(40, (Drawing.PAGE_WIDTH - 2 * LEFT) / frames * 0.3);
    this.unitsPerMetre = room / Math.max(largest, 1e-4);
  }

  /** The drawing; empty if no column was plumbed. */
  public static Optional<Drawing> of(SetOut setOut, StageFindings findings, LengthFigures figures) {
    List<Outcome> leans =
        findings.outcomes().stream()
            .filter(outcome -> outcome.check().equals("column-plumb"))
            .filter(outcome -> outcome.target().matches("[AB]\\d+/(along|across)"))
            .toList();
    return leans.isEmpty()
        ? Optional.empty()
        : Optional.of(new LeanDrawing(setOut, leans, figures).drawing());
  }

  private Drawing drawing() {
    strip("A", 0, "/along", "wall A, along: to the right is toward end n");
    strip("B", 1, "/along", "wall B, along: to the right is toward end n");
    strip("A", 2, "/across", "wall A, across: to the right is toward B");
    strip("B", 3, "/across", "wall B, across: to the right is toward B");
    ScaleBar.draw(sketch, unitsPerMetre, figures, "lean at column height");
    return new Drawing(
        "Columns in elevation",
        sketch.picture(),
        "Heavy line: the column as found, its lean drawn to the scale of the bar. Dotted line:"
            + " plumb. Whisker at the top: ± U. Square brackets: the permitted lean. Heights are not"
            + " to scale.");
  }

  private void strip(String wall, int row, String axis, String title) {
    double foot = row * STRIP + STRIP;
    sketch.bareWords(new Spot(4, foot - TALL - 16), Anchor.START, Sketch.Weight.BOLD, title);
    sketch.line(Ink.THIN, new Spot(LEFT - 30, foot), new Spot(Drawing.PAGE_WIDTH - 30, foot));
    for (int number : setOut.portalFrameNumbers()) {
      column(wall + number, new Spot(x(number), foot), axis);
    }
  }

  private double x(int number) {
    int frames = setOut.building().portalFrameCount();
    double step = (Drawing.PAGE_WIDTH - 2 * LEFT) / Math.max(1, frames - 1);
    return LEFT + (number - 1) * step;
  }

  private void column(String mark, Spot foot, String axis) {
    Spot plumb = foot.moved(0, -TALL);
    sketch.line(Ink.GRID, foot, plumb);
    sketch.bareWords(foot.moved(0, 15), Anchor.MIDDLE, Sketch.Weight.REGULAR, mark);
    leans.stream()
        .filter(lean -> lean.target().equals(mark + axis))
        .findFirst()
        .ifPresent(lean -> lean(lean, foot, plumb));
  }

  private void lean(Outcome lean, Spot foot, Spot plumb) {
    lean.limits().ifPresent(limits -> brackets(limits, plumb));
    Spot top = plumb.moved(lean.deviation() * unitsPerMetre, 0);
    double reach = lean.expandedUncertainty() * unitsPerMetre;
    sketch.line(Ink.FOUND, foot, top);
    sketch.line(Ink.THIN, top.moved(-reach, 0), top.moved(reach, 0));
    sketch.line(Ink.THIN, top.moved(-reach, -4), top.moved(-reach, 4));
    sketch.line(Ink.THIN, top.moved(reach, -4), top.moved(reach, 4));
    VerdictMark.draw(sketch, foot.moved(-22, 10), 5.5, lean.verdict());
  }

  private void brackets(Limits limits, Spot plumb) {
    limits.lower().ifPresent(metres -> bracket(plumb.moved(metres * unitsPerMetre, 0), 5));
    limits.upper().ifPresent(metres -> bracket(plumb.moved(metres * unitsPerMetre, 0), -5));
  }

  private void bracket(Spot at, double foot) {
    sketch.line(Ink.THIN, at.moved(0, -8), at.moved(0, 8));
    sketch.line(Ink.THIN, at.moved(0, -8), at.moved(foot, -8));
    sketch.line(Ink.THIN, at.moved(0, 8), at.moved(foot, 8));
  }

  private static double limit(Outcome outcome) {
    return outcome
        .limits()
        .map(limits -> Math.max(limits.upper().orElse(0), -limits.lower().orElse(0)))
        .orElse(0.0);
  }
}
