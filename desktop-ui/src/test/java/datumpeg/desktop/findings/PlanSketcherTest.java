package datumpeg.desktop.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.reduce.StageFindings;
import datumpeg.desktop.findings.PlanSketch.Arrow;
import datumpeg.desktop.findings.PlanSketch.Spot;
import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.source.ReducedJob;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PlanSketcherTest {
  private static PlanSketch sketch(String stage) {
    ReducedJob work = InventedJobs.reduced();
    return sketch(work.findings().stage(stage).orElseThrow());
  }

  private static PlanSketch sketch(StageFindings findings) {
    return new PlanSketcher(InventedJobs.job().setOut(), findings, Words.of(Locale.ROOT)).sketch();
  }

  /**
   * The largest deviation, 12.04 mm at B4, times 50 is 0.60 m; times 100 would pass 12 % of 9 m.
   */
  @Test
  void cornersAreExaggeratedByTheLargestRoundFactorThatFits() {
    PlanSketch sketch = sketch("arrival");
    assertTrue(
        sketch.legend().startsWith("Slab as found, deviations drawn 50 times"), sketch.legend());
    Spot farCorner = sketch.found().get(2);
    assertEquals("B4", farCorner.name());
    assertEquals(18 - 50 * 0.012, farCorner.xMetres(), 1e-9);
    assertEquals(9 + 50 * 0.001, farCorner.yMetres(), 1e-9);
  }

  @Test
  void columnsStandInsideTheSlabWhereTheyWereDesigned() {
    List<Spot> columns = sketch("arrival").columns();
    assertEquals(8, columns.size());
    assertEquals(new Spot("A1", 0.032, 0.214), columns.get(0));
  }

  @Test
  void leanPointsTheWayTheTopLeansAndTakesTheGraverStanding() {
    ReducedJob work = InventedJobs.reduced();
    StageFindings before = work.earlier().get(0).stage("lift").orElseThrow();
    List<Arrow> arrows = sketch(before).arrows();
    assertEquals(2, arrows.size());
    Arrow moved = arrows.get(0);
    assertEquals("13", moved.label());
    assertEquals(Standing.NONCONFORMING, moved.standing());
    assertTrue(moved.toYMetres() > moved.fromYMetres(), "positive across is toward B");
    assertTrue(moved.toXMetres() > moved.fromXMetres(), "positive along is toward end n");
    Arrow other = arrows.get(1);
    assertTrue(other.toYMetres() < other.fromYMetres(), "negative across is toward A");
  }

  @Test
  void spacingsStandBetweenTheirColumns() {
    PlanSketch sketch = sketch("lift");
    assertEquals(
        List.of("+3", "+15"), sketch.spans().stream().map(PlanSketch.Span::label).toList());
    assertEquals(6, sketch.spans().get(0).toXMetres(), 1e-9);
    assertEquals(12, sketch.spans().get(1).toXMetres(), 1e-9);
  }

  @Test
  void bayMeasuredAtBaseAndEaveIsOneSpanWithTheGraverStanding() {
    StageFindings lift = InventedJobs.reduced().findings().stage("lift").orElseThrow();
    StageFindings both =
        new StageFindings(
            "lift",
            3,
            List.of(
                InventedJobs.outcome("frame-spacing", "A1-A2/base", 1, 3.1, 10, ""),
                InventedJobs.outcome("frame-spacing", "A1-A2/eave", 1, 14.8, 10, ""),
                InventedJobs.outcome("frame-spacing", "A2-A3/eave", 1, -1.2, 10, "")),
            Map.of(),
            Map.of(),
            List.of(),
            List.of(),
            lift.answer());
    List<PlanSketch.Span> spans = sketch(both).spans();
    assertEquals(
        List.of("+3 / +15", "eave −1"), spans.stream().map(PlanSketch.Span::label).toList());
    assertEquals(Standing.NONCONFORMING, spans.get(0).standing());
    assertEquals(Standing.CONFORMING, spans.get(1).standing());
  }

  @Test
  void levelsAreWrittenAgainstTheMean() {
    assertEquals(
        List.of("+2", "−4"),
        sketch("arrival").levels().stream().map(PlanSketch.Level::label).toList());
  }

  @Test
  void drawingIsToldInWords() {
    assertTrue(
        sketch("lift").spoken().contains("Column A3 leans 2 mm, conforming."),
        sketch("lift").spoken());
  }

  @Test
  void stageWithNothingOnThePlanSaysSo() {
    StageFindings lift = InventedJobs.reduced().findings().stage("lift").orElseThrow();
    StageFindings bare =
        new StageFindings(
            "lift", 1, List.of(), Map.of(), Map.of(), List.of(), List.of(), lift.answer());
    PlanSketch sketch = sketch(bare);
    assertTrue(sketch.sentence().startsWith("Only the design is drawn"), sketch.sentence());
    assertEquals("", sketch.legend());
    assertEquals(4, sketch.outline().size());
  }
}
