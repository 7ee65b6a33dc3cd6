package datumpeg.analysis.check.enclosure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.Opening;
import datumpeg.analysis.building.Wall;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.detail.Anchors;
import datumpeg.analysis.detail.Details;
import datumpeg.analysis.detail.Gutter;
import datumpeg.analysis.detail.Mullion;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.StageFindings;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class EnclosureChecksTest {
  private static InventedJob job() {
    return new InventedJob()
        .meter("laser", MeasuredQuantity.DISTANCE, 0.001, 0)
        .meter("level", MeasuredQuantity.HEIGHT, 0.0005, 0)
        .meter("rule", MeasuredQuantity.OFFSET, 0.001, 0)
        .meter("tilt", MeasuredQuantity.TILT, StrictMath.toRadians(0.02), 0);
  }

  private static InventedJob withMullions() {
    InventedJob job = job();
    job.details =
        Details.NONE.withMullions(
            List.of(
                new Mullion(1, "M1", 3, OptionalDouble.of(4)),
                new Mullion(1, "M2", 6, OptionalDouble.empty())));
    return job;
  }

  private static Outcome outcome(StageFindings found, String check, String target) {
    return found.outcome(check, target).orElseThrow(() -> new AssertionError(found.outcomes()));
  }

  /** 4000 · tan 0.25° = 17.453 mm. */
  @Test
  void mullionLeansOverItsOwnHeight() {
    StageFindings found =
        withMullions()
            .limit("mullion-plumb", 0.008)
            .read(
                "tightening",
                MeasuredQuantity.TILT,
                "mullion.1.M1/across",
                StrictMath.toRadians(0.25))
            .reduced("tightening");
    Outcome lean = outcome(found, "mullion-plumb", "1.M1/across");
    assertEquals(0.017453, lean.deviation(), 1e-6);
    assertTrue(lean.is(Verdict.NONCONFORMING));
    assertTrue(lean.remedy().contains("side A"), lean.remedy());
  }

  /** Under the gable a post 6 m across is 3 m from side B: 3.6 + (3 − 0.214)·tan 10°. */
  @Test
  void mullionWithoutAHeightEndsAtTheRafter() {
    assertEquals(
        3.6 + 2.786 * StrictMath.tan(StrictMath.toRadians(10)),
        withMullions().build().setOut().roofHeightMetres(6),
        1e-12);
  }

  /** Column line 214 mm in, posts at 3 and 6 m: 2786, 3000, 2786 mm across. */
  @Test
  void mullionsAreSpacedAcrossTheEndChainedOrRunning() {
    double in = 0.064 - 0.032;
    double running = Math.sqrt(5.791 * 5.791 + in * in);
    StageFindings found =
        withMullions()
            .read("tightening", MeasuredQuantity.DISTANCE, "base.A1-mullion.1.M2", running)
            .read("tightening", MeasuredQuantity.DISTANCE, "mullion.1.M1-mullion.1.M2", 3.005)
            .reduced("tightening");
    assertEquals(0.005, outcome(found, "mullion-spacing", "1/M1-M2").deviation(), 1e-9);
    assertEquals(0, outcome(found, "mullion-spacing", "1/A-M1").deviation(), 2e-6);
    assertTrue(found.outcome("mullion-spacing", "1/M2-B").isEmpty());
  }

  /** A head pushed 10 mm to the right: √(2.89² + 3²) − √(2.87² + 3²) = 13.8 mm. */
  @Test
  void openingPushedOverShowsInItsDiagonals() {
    InventedJob job = job().limit("opening", 0.005);
    job.openings = List.of(new Opening("D1", Wall.END_1, 2.5, 2.88, 3));
    double rising = Math.sqrt(2.89 * 2.89 + 9);
    double falling = Math.sqrt(2.87 * 2.87 + 9);
    double post = Math.sqrt(9 + 0.0001);
    StageFindings found =
        job.read(
                "tightening",
                MeasuredQuantity.DISTANCE,
                "opening.D1/left-foot-opening.D1/right-foot",
                2.88)
            .read(
                "tightening",
                MeasuredQuantity.DISTANCE,
                "opening.D1/left-head-opening.D1/right-head",
                2.88)
            .read(
                "tightening",
                MeasuredQuantity.DISTANCE,
                "opening.D1/left-foot-opening.D1/left-head",
                post)
            .read(
                "tightening",
                MeasuredQuantity.DISTANCE,
                "opening.D1/right-foot-opening.D1/right-head",
                post)
            .read(
                "tightening",
                MeasuredQuantity.DISTANCE,
                "opening.D1/left-foot-opening.D1/right-head",
                rising)
            .read(
                "tightening",
                MeasuredQuantity.DISTANCE,
                "opening.D1/left-head-opening.D1/right-foot",
                falling)
            .read(
                "tightening",
                MeasuredQuantity.TILT,
                "opening.D1/left/across",
                StrictMath.atan(-0.01 / 3))
            .reduced("tightening");
    assertEquals(rising - falling, outcome(found, "opening", "D1/diagonals").deviation(), 1e-12);
    assertTrue(outcome(found, "opening", "D1/diagonals").is(Verdict.NONCONFORMING));
    assertEquals(0, outcome(found, "opening", "D1/foot").deviation(), 1e-9);
    assertEquals(post - 3, outcome(found, "opening", "D1/left").deviation(), 1e-9);
    assertEquals(-0.01, outcome(found, "opening", "D1/left/across").deviation(), 1e-12);
    assertTrue(found.causes().get(0).sentence().contains("to the right"));
  }

  @Test
  void openingReadInPartIsToldAsObserved() {
    InventedJob job = job();
    job.openings = List.of(new Opening("D1", Wall.END_1, 2.5, 2.88, 3));
    StageFindings found =
        job.read(
                "tightening",
                MeasuredQuantity.DISTANCE,
                "opening.D1/left-foot-opening.D1/right-foot",
                2.885)
            .reduced("tightening");
    assertEquals(0.005, outcome(found, "opening", "D1/foot").deviation(), 1e-12);
    assertTrue(found.outcome("opening", "D1/head").isEmpty());
  }

  /** 12 m at 1:500 is 24 mm (check value of the trade's arithmetic). */
  @Test
  void gutterStandsAboveItsOutletByItsFall() {
    InventedJob job = job().limit("gutter-fall", 0.005);
    job.details = Details.NONE.withGutters(Map.of('A', new Gutter(18, 0.002, 1)));
    StageFindings found =
        job.read("roofing", MeasuredQuantity.HEIGHT, "gutter.A@(18)", 1.0)
            .read("roofing", MeasuredQuantity.HEIGHT, "gutter.A@(6)", 1.024)
            .read("roofing", MeasuredQuantity.HEIGHT, "gutter.A@(0)", 1.018)
            .reduced("roofing");
    Outcome six = outcome(found, "gutter-fall", "A@(6)");
    assertEquals(0.024, six.nominal().orElseThrow(), 1e-12);
    assertEquals(0, six.deviation(), 1e-12);
    assertEquals(-0.018, outcome(found, "gutter-fall", "A@(0)").deviation(), 1e-12);
    assertTrue(found.notes().stream().anyMatch(note -> note.text().contains("water will stand")));
  }

  @Test
  void gutterWithoutAPlanIsNotJudged() {
    StageFindings found =
        job()
            .read("roofing", MeasuredQuantity.HEIGHT, "gutter.B@(18)", 1.0)
            .read("roofing", MeasuredQuantity.HEIGHT, "gutter.B@(6)", 1.024)
            .reduced("roofing");
    assertTrue(found.outcomes().isEmpty());
    assertTrue(found.notes().stream().anyMatch(note -> note.kind() == Note.Kind.UNDETERMINED));
  }

  /** 18 m at most 1 m apart: at least 19 brackets. */
  @Test
  void bracketsStandAtMostTheirSpacingApart() {
    assertEquals(19, new Gutter(18, 0.002, 1).bracketsMetres(18).size());
    assertEquals(20, new Gutter(18, 0.002, 1).bracketsMetres(18.01).size());
    assertEquals(2, new Gutter(0, 0.002, 5).bracketsMetres(3).size());
  }

  @Test
  void sheetsCreepAndSkewOverTen() {
    InventedJob job = job().limit("sheet-run", 0.004);
    job.sheetCoverMetres = OptionalDouble.of(0.762);
    StageFindings found =
        job.read("roofing", MeasuredQuantity.DISTANCE, "sheet.A1/eave-sheet.A11/eave", 7.628)
            .read("roofing", MeasuredQuantity.DISTANCE, "sheet.A1/ridge-sheet.A11/ridge", 7.622)
            .reduced("roofing");
    assertEquals(0.008, outcome(found, "sheet-run", "A/10/eave").deviation(), 1e-9);
    assertEquals(0.002, outcome(found, "sheet-run", "A/10/ridge").deviation(), 1e-9);
    assertEquals(-0.006, outcome(found, "sheet-run", "A/10/skew").deviation(), 1e-9);
    assertEquals("+0.80 mm a sheet", outcome(found, "sheet-run", "A/10/eave").aside());
  }

  @Test
  void roofBayIsSquareWhenItsDiagonalsAgree() {
    StageFindings found =
        job()
            .limit("roof-square", 0.006)
            .read("roofing", MeasuredQuantity.DISTANCE, "eave.A2-apex.3", 7.480)
            .read("roofing", MeasuredQuantity.DISTANCE, "eave.A3-apex.2", 7.468)
            .reduced("roofing");
    Outcome bay = outcome(found, "roof-square", "A2-A3");
    assertEquals(0.012, bay.deviation(), 1e-12);
    assertTrue(bay.is(Verdict.NONCONFORMING));
    assertTrue(bay.remedy().contains("toward end 1"), bay.remedy());
  }

  @Test
  void eavesSpreadFromTheHighestToTheLowest() {
    StageFindings found =
        job()
            .read("tightening", MeasuredQuantity.HEIGHT, "eave.A1", 2.000)
            .read("tightening", MeasuredQuantity.HEIGHT, "eave.A2", 2.007)
            .read("tightening", MeasuredQuantity.HEIGHT, "eave.B2", 1.998)
            .reduced("tightening");
    Outcome eaves = outcome(found, "eave-level", "eaves");
    assertEquals(0.009, eaves.deviation(), 1e-12);
    assertTrue(
        eaves.aside().contains("highest at column A2 at the eave, lowest at column B2 at the eave"),
        eaves.aside());
  }

  /** Ends that read 0 and 3 mm: a third along, the chord is at 1 mm. */
  @Test
  void lineMarkLiesOffTheChordThroughItsEnds() {
    StageFindings found =
        job()
            .read("set-out", MeasuredQuantity.OFFSET, "line.A1", 0)
            .read("set-out", MeasuredQuantity.OFFSET, "line.A4", 0.003)
            .read("set-out", MeasuredQuantity.OFFSET, "line.A2", 0.006)
            .reduced("set-out");
    Outcome mark = outcome(found, "line-straight", "line.A2");
    assertEquals(0.005, mark.deviation(), 1e-12);
    double u = 0.001 * Math.sqrt(1 + 4.0 / 9 + 1.0 / 9);
    assertEquals(u, mark.standardUncertainty(), 1e-12);
  }

  /** Base centre 139 mm in, anchors 80 mm apart: the outer one is 99 mm in. */
  @Test
  void anchorsKeepTheProjectsEdgeDistance() {
    InventedJob job = job();
    job.details = Details.NONE.withAnchors(new Anchors(0.075, 0.08, 0));
    StageFindings found =
        job.read("set-out", MeasuredQuantity.DISTANCE, "anchor.A2-edge.A2", 0.139)
            .read("set-out", MeasuredQuantity.DISTANCE, "anchor.A3-edge.A3", 0.110)
            .read("set-out", MeasuredQuantity.DISTANCE, "anchor.A2-line.A2", 0.078)
            .reduced("set-out");
    assertEquals(0.024, outcome(found, "anchor-edge", "A2").deviation(), 1e-12);
    assertTrue(outcome(found, "anchor-edge", "A2").is(Verdict.CONFORMING));
    Outcome near = outcome(found, "anchor-edge", "A3");
    assertEquals(-0.005, near.deviation(), 1e-12);
    assertTrue(near.is(Verdict.NONCONFORMING));
    assertTrue(near.remedy().contains("approval"), near.remedy());
    assertEquals(0.003, outcome(found, "anchor-edge", "A2/mark").deviation(), 1e-12);
  }
}
