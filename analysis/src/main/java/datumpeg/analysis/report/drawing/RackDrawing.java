package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.writing.CheckWords;
import datumpeg.analysis.report.writing.LengthFigures;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Wall frames on the slab, racked as found: the foot held, the eave shifted many times larger. */
public final class RackDrawing {
  private static final double LEFT = 110;
  private static final double RIGHT = 610;
  private static final double GAP = 92;

  private final LengthFigures figures;
  private final double height;
  private final Exaggeration exaggeration;
  private final double unitsPerMetre;
  private final Sketch sketch = new Sketch(Drawing.PAGE_WIDTH, "Rack of the wall frames");

  private RackDrawing(SetOut setOut, List<Outcome> racks, LengthFigures figures) {
    this.figures = figures;
    double length = setOut.overallLengthMetres();
    this.unitsPerMetre = (RIGHT - LEFT) / length;
    this.height = Math.max(60, Math.min(150, setOut.building().eaveHeightMetres() * unitsPerMetre));
    double largest =
        racks.stream()
            .mapToDouble(rack -> Math.abs(rack.deviation()) + rack.expandedUncertainty())
            .max()
            .orElse(0);
    this.exaggeration = Exaggeration.fitting(largest, 70 / unitsPerMetre);
  }

  /** The drawing; empty if no wall frame was measured. */
  public static Optional<Drawing> of(SetOut setOut, StageFindings findings, LengthFigures figures) {
    List<Outcome> racks =
        findings.outcomes().stream()
            .filter(outcome -> outcome.check().equals("wall-square"))
            .toList();
    return racks.isEmpty()
        ? Optional.empty()
        : Optional.of(new RackDrawing(setOut, racks, figures).drawing(racks));
  }

  private Drawing drawing(List<Outcome> racks) {
    for (int row = 0; row < racks.size(); row++) {
      frame(racks.get(row), (row + 1) * (height + GAP));
    }
    ScaleBar.draw(sketch, unitsPerMetre * exaggeration.factor(), figures, "rack at the eave");
    return new Drawing(
        "Rack of the wall frames",
        sketch.picture(),
        "Thin line: as designed. Heavy line: as found, the rack drawn "
            + exaggeration.text()
            + " larger than the frame, the foot held; end n is on the right. Dotted ovals: ± U.");
  }

  private void frame(Outcome rack, double foot) {
    double shift = rack.deviation() * unitsPerMetre * exaggeration.factor();
    double reach = rack.expandedUncertainty() * unitsPerMetre * exaggeration.factor();
    sketch.polygon(Ink.DESIGN, corners(foot, 0));
    sketch.polygon(Ink.FOUND, corners(foot, shift));
    for (double x : new double[] {LEFT, RIGHT}) {
      Spot eave = new Spot(x, foot - height);
      sketch.ellipse(Ink.UNCERTAINTY, eave.moved(shift, 0), Math.max(reach, 1), 5, 0);
      sketch.arrow(eave, eave.moved(shift, 0));
    }
    List<String> lines = new ArrayList<>();
    lines.add(figures.deviation(rack.deviation(), rack.expandedUncertainty()));
    lines.add(CheckWords.verdict(rack.verdict()));
    new Label(
            new Spot((LEFT + RIGHT) / 2, foot - height / 2),
            Anchor.MIDDLE,
            Label.Side.BELOW,
            "wall " + rack.target(),
            lines)
        .drawOn(sketch);
  }

  private List<Spot> corners(double foot, double shift) {
    return List.of(
        new Spot(LEFT, foot),
        new Spot(RIGHT, foot),
        new Spot(RIGHT + shift, foot - height),
        new Spot(LEFT + shift, foot - height));
  }
}
