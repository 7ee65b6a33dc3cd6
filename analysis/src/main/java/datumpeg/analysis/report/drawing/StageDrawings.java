package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.LevelEstimate;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.writing.LengthFigures;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Every drawing that a stage's findings give something for, in the order of their use. */
public final class StageDrawings {
  private static final Set<String> BAR_CHECKS =
      Set.of("frame-spacing", "spacing-match", "clear-span", "overall-length");

  private StageDrawings() {}

  /** The drawings; none where nothing was found that has a place. */
  public static List<Drawing> of(SetOut setOut, StageFindings findings, LengthFigures figures) {
    List<Drawing> drawings = new ArrayList<>();
    if (!findings.causes().isEmpty() || SlipPlaces.isAny(findings)) {
      drawings.add(WhereDrawing.of(setOut, findings));
    }
    PlanDrawing.of(setOut, findings, figures).ifPresent(drawings::add);
    findings.placement().ifPresent(lines -> drawings.add(LinesDrawing.of(setOut, lines, figures)));
    levels(setOut, findings, figures, drawings);
    RackDrawing.of(setOut, findings, figures).ifPresent(drawings::add);
    PlumbDrawing.of(setOut, findings, figures).ifPresent(drawings::add);
    LeanDrawing.of(setOut, findings, figures).ifPresent(drawings::add);
    drawings.addAll(BarDrawing.of(spacings(findings), figures, "Spacings and spans"));
    return drawings;
  }

  /** The outcomes that are told as bars. */
  public static List<Outcome> spacings(StageFindings findings) {
    return findings.outcomes().stream()
        .filter(outcome -> BAR_CHECKS.contains(outcome.check()))
        .toList();
  }

  private static void levels(
      SetOut setOut, StageFindings findings, LengthFigures figures, List<Drawing> drawings) {
    Map<String, LevelEstimate> slab = new LinkedHashMap<>();
    Map<String, LevelEstimate> seats = new LinkedHashMap<>();
    findings
        .levels()
        .forEach((name, level) -> (name.startsWith("seat.") ? seats : slab).put(name, level));
    LevelDrawing.of(setOut, slab, figures, "Levels of the slab").ifPresent(drawings::add);
    LevelDrawing.of(setOut, seats, figures, "Levels under the bases")
        .map(drawing -> withPacking(drawing, findings))
        .ifPresent(drawings::add);
  }

  private static Drawing withPacking(Drawing drawing, StageFindings findings) {
    String packing =
        String.join(
            " ",
            findings.outcomes().stream()
                .filter(outcome -> outcome.check().equals("seat-level"))
                .map(Outcome::remedy)
                .filter(remedy -> !remedy.isBlank())
                .toList());
    return packing.isEmpty()
        ? drawing
        : new Drawing(drawing.title(), drawing.picture(), drawing.caption() + " " + packing);
  }
}
