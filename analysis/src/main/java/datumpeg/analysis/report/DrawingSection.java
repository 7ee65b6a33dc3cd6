package datumpeg.analysis.report;

import datumpeg.analysis.check.LevelEstimate;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.drawing.BarDrawing;
import datumpeg.analysis.report.drawing.Drawing;
import datumpeg.analysis.report.drawing.LevelDrawing;
import datumpeg.analysis.report.drawing.PlanDrawing;
import datumpeg.analysis.report.drawing.PlumbDrawing;
import datumpeg.analysis.report.writing.LengthFigures;
import datumpeg.analysis.report.writing.Markup;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The drawings of a stage: whichever its findings give something to draw for. */
final class DrawingSection {
  private static final Set<String> SHAPE_CHECKS =
      Set.of("slab-size", "slab-diagonals", "slab-square");
  private static final Set<String> BAR_CHECKS =
      Set.of("frame-spacing", "spacing-match", "clear-span", "overall-length");

  private final Job job;
  private final StageFindings findings;
  private final LengthFigures figures;

  DrawingSection(Job job, StageFindings findings, LengthFigures figures) {
    this.job = job;
    this.findings = findings;
    this.figures = figures;
  }

  void write(Markup page) {
    plan(page);
    levels(page);
    PlumbDrawing.of(job.setOut(), findings, figures).ifPresent(drawing -> titled(page, drawing));
    List<Outcome> spacings =
        findings.outcomes().stream()
            .filter(outcome -> BAR_CHECKS.contains(outcome.check()))
            .toList();
    BarDrawing.of(spacings, figures, "Spacings and spans")
        .forEach(drawing -> titled(page, drawing));
  }

  private void plan(Markup page) {
    Optional<Drawing> plan = PlanDrawing.of(job.setOut(), findings, figures);
    if (plan.isPresent()) {
      titled(page, plan.get());
    } else if (expectsPlan()) {
      page.element("h3", "The slab in plan");
      page.element(
          "p",
          "No plan is drawn: the distances taken do not fix where at least three of the slab's"
              + " corners are. With all sides and both diagonals they do.");
    }
  }

  private boolean expectsPlan() {
    return job.stage(findings.stage())
            .filter(stage -> stage.checks().stream().anyMatch(SHAPE_CHECKS::contains))
            .isPresent()
        || findings.outcomes().stream().anyMatch(outcome -> SHAPE_CHECKS.contains(outcome.check()));
  }

  private void levels(Markup page) {
    Map<String, LevelEstimate> slab = new LinkedHashMap<>();
    Map<String, LevelEstimate> seats = new LinkedHashMap<>();
    findings
        .levels()
        .forEach((name, level) -> (name.startsWith("seat.") ? seats : slab).put(name, level));
    LevelDrawing.of(job.setOut(), slab, figures, "Levels of the slab")
        .ifPresent(drawing -> titled(page, drawing));
    LevelDrawing.of(job.setOut(), seats, figures, "Levels under the bases")
        .ifPresent(
            drawing -> {
              titled(page, drawing);
              packing(page);
            });
  }

  private void packing(Markup page) {
    findings.outcomes().stream()
        .filter(outcome -> outcome.check().equals("seat-level") && !outcome.remedy().isBlank())
        .forEach(
            outcome -> page.open("p").element("b", "Packing: ").words(outcome.remedy()).close());
  }

  private static void titled(Markup page, Drawing drawing) {
    page.open("div", "class", "drawing").element("h3", drawing.title());
    picture(page, drawing);
    page.close();
  }

  /** A drawing without a heading of its own. */
  static void write(Markup page, Drawing drawing) {
    page.open("div", "class", "drawing");
    picture(page, drawing);
    page.close();
  }

  private static void picture(Markup page, Drawing drawing) {
    page.append(drawing.svg()).element("p", drawing.caption(), "class", "caption");
  }
}
