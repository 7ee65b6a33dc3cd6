package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.remedy.LinePlacement;
import datumpeg.analysis.report.writing.LengthFigures;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Where to snap the lines on the slab as it is: what to mark at each corner, from which edge. */
public final class LinesDrawing {
  private static final double MARGIN = 150;
  private static final double HEIGHT = 280;

  private final SetOut setOut;
  private final LinePlacement placement;
  private final LengthFigures figures;
  private final List<PlanPoint> outline;
  private final PlanView view;
  private final Sketch sketch = new Sketch(Drawing.PAGE_WIDTH, "Where to snap the lines");

  private LinesDrawing(SetOut setOut, LinePlacement placement, LengthFigures figures) {
    this.setOut = setOut;
    this.placement = placement;
    this.figures = figures;
    this.outline = List.copyOf(setOut.slab().corners().values());
    this.view = PlanView.fitting(outline, Drawing.PAGE_WIDTH, MARGIN, HEIGHT);
  }

  public static Drawing of(SetOut setOut, LinePlacement placement, LengthFigures figures) {
    return new LinesDrawing(setOut, placement, figures).drawing();
  }

  private Drawing drawing() {
    sketch.polygon(Ink.DESIGN, view.spots(outline));
    Map<String, List<LinePlacement.Offset>> byLine = new LinkedHashMap<>();
    placement
        .offsets()
        .forEach(
            offset -> byLine.computeIfAbsent(offset.line(), any -> new ArrayList<>()).add(offset));
    List<Spot> corners = new ArrayList<>();
    for (String line : byLine.keySet()) {
      spot(line).ifPresent(corners::add);
    }
    if (corners.size() > 2) {
      sketch.polygon(Ink.FOUND, around(corners));
    }
    Compass.draw(sketch, view, outline);
    byLine.forEach(this::label);
    return new Drawing(
        "Where to snap the lines",
        sketch.picture(),
        placement.sentence()
            + " Heavy: the lines. At each line mark, in "
            + figures.unitWord()
            + ": what to measure square from the edge named, and in brackets what was planned; a minus"
            + " lies beyond the edge.");
  }

  private Optional<Spot> spot(String line) {
    return GridMark.parse(line)
        .map(mark -> view.spot(setOut.position(PointName.at("line", mark)).plan()));
  }

  /** Corner after corner, so that the outline does not cross itself. */
  private static List<Spot> around(List<Spot> corners) {
    double x = corners.stream().mapToDouble(Spot::x).average().orElse(0);
    double y = corners.stream().mapToDouble(Spot::y).average().orElse(0);
    return corners.stream()
        .sorted(
            java.util.Comparator.comparingDouble(
                corner -> StrictMath.atan2(corner.y() - y, corner.x() - x)))
        .toList();
  }

  private void label(String line, List<LinePlacement.Offset> offsets) {
    spot(line).ifPresent(at -> label(at, line, offsets));
  }

  private void label(Spot at, String line, List<LinePlacement.Offset> offsets) {
    boolean right = at.x() > sketch.width() / 2;
    boolean upper = line.startsWith("B");
    List<String> lines =
        offsets.stream()
            .map(
                offset ->
                    figures.number(offset.metres())
                        + " from "
                        + offset.edge()
                        + " ("
                        + figures.number(offset.plannedMetres())
                        + ")")
            .toList();
    new Label(
            at.moved(right ? 20 : -20, upper ? -22 : 32),
            right ? Anchor.END : Anchor.START,
            upper ? Label.Side.ABOVE : Label.Side.BELOW,
            line + (line.equals(placement.shortAt()) ? ", the tightest" : ""),
            lines)
        .drawOn(sketch);
    sketch.circle(Ink.PAPER, at, 4);
  }
}
