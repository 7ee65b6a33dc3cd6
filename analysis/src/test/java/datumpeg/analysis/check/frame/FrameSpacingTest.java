package datumpeg.analysis.check.frame;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.reduce.Cause;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.Reduction;
import datumpeg.analysis.reduce.StageFindings;
import java.util.List;
import org.junit.jupiter.api.Test;

class FrameSpacingTest {

  /** A bay from two running distances is known to √2 of one: u_bay = √2·u (identity, computed). */
  @Test
  void runningDistancesGiveBaysKnownToRootTwo() {
    StageFindings found =
        new InventedJob()
            .meter("laser", DISTANCE, 0.001, 0)
            .read("lift", DISTANCE, "base.A1-base.A2", 5.971)
            .read("lift", DISTANCE, "base.A1-base.A3", 11.969)
            .read("lift", DISTANCE, "base.A1-base.A4", 17.936)
            .reduced("lift");
    Outcome inner = found.outcome("frame-spacing", "A2-A3/base").orElseThrow();
    assertEquals(5.998, inner.measured(), 1e-12);
    assertEquals(6, inner.nominal().orElseThrow(), 1e-12);
    assertEquals(0.001 * Math.sqrt(2), inner.standardUncertainty(), 1e-9);
    Outcome end = found.outcome("frame-spacing", "A1-A2/base").orElseThrow();
    assertEquals(5.968, end.nominal().orElseThrow(), 1e-12);
    assertEquals(0.003, end.deviation(), 1e-12);
    Outcome overall = found.outcome("overall-length", "A").orElseThrow();
    assertEquals(0, overall.deviation(), 1e-12);
  }

  @Test
  void facesNamedAreTakenOffTheDistance() {
    Outcome bay =
        new InventedJob()
            .meter("laser", DISTANCE, 0.001, 0)
            .read("lift", DISTANCE, "base.A2/high-base.A3/low", 6 - 0.064)
            .reduced("lift")
            .outcome("frame-spacing", "A2-A3/base")
            .orElseThrow();
    assertEquals(0, bay.deviation(), 1e-12);
  }

  @Test
  void aBayThatIsLongNamesTheFramesToShift() {
    StageFindings found = longBay("standing");
    assertEquals(1, found.causes().size());
    Cause cause = found.causes().get(0);
    assertEquals(Verdict.NONCONFORMING, cause.kind());
    assertTrue(cause.sentence().startsWith("Bay A2-A3 at the base is 18.0"), cause.sentence());
    assertTrue(cause.action().startsWith("Shift"), cause.action());
    assertTrue(
        cause.action().contains("A2 by 6.0 mm toward end n, A3 by 6.0 mm toward end 1"),
        cause.action());
  }

  @Test
  void anchoredBasesGoToTheEngineer() {
    assertTrue(longBay("lift").causes().get(0).action().contains("ask the engineer"));
  }

  /** Shifting an eave over a base that stays would only make the column lean. */
  @Test
  void aBayThatIsLongAtBaseAndEaveIsLaidToItsBase() {
    InventedJob job =
        new InventedJob().meter("laser", DISTANCE, 0.0008, 0).limit("frame-spacing", 0.010);
    for (String level : List.of("base", "eave")) {
      job.read("tightening", DISTANCE, level + ".A1-" + level + ".A2", 5.968)
          .read(
              "tightening",
              DISTANCE,
              level + ".A2-" + level + ".A3",
              level.equals("eave") ? 6.020 : 6.018)
          .read("tightening", DISTANCE, level + ".A3-" + level + ".A4", 5.968);
    }
    List<Cause> causes = job.reduced("tightening").causes();
    assertEquals(1, causes.size());
    assertTrue(causes.get(0).sentence().contains("at the base"), causes.get(0).sentence());
    assertTrue(causes.get(0).action().contains("ask the engineer"), causes.get(0).action());
  }

  private static StageFindings longBay(String stage) {
    return new InventedJob()
        .meter("laser", DISTANCE, 0.0008, 0)
        .limit("frame-spacing", 0.010)
        .read(stage, DISTANCE, "base.A1-base.A2", 5.968)
        .read(stage, DISTANCE, "base.A2-base.A3", 6.018)
        .read(stage, DISTANCE, "base.A3-base.A4", 5.968)
        .reduced(stage);
  }

  @Test
  void aSlipOfAWholeMetreIsFoundWhenARunningDistanceChecksIt() {
    StageFindings found =
        new InventedJob()
            .meter("laser", DISTANCE, 0.001, 0)
            .limit("frame-spacing", 0.010)
            .read("lift", DISTANCE, "base.A1-base.A2", 5.968)
            .read("lift", DISTANCE, "base.A2-base.A3", 7.000)
            .read("lift", DISTANCE, "base.A3-base.A4", 5.968)
            .read("lift", DISTANCE, "base.A1-base.A3", 11.968)
            .read("lift", DISTANCE, "base.A2-base.A4", 11.968)
            .read("lift", DISTANCE, "base.A1-base.A4", 17.936)
            .reduced("lift");
    Note slip = found.notes().get(0);
    assertEquals(Note.Kind.SLIP_SUSPECTED, slip.kind());
    assertTrue(
        slip.text()
            .contains(
                "from the foot of column A2 to the foot of column A3 reads 1000.0 mm too long"),
        slip.text());
    assertEquals(List.of("r002"), slip.readingIds());
  }

  /** Running distances, then A3 is moved and read by chained ones: rounds are never averaged. */
  @Test
  void whatWasReadBeforeAMoveIsLeftOutWhateverPairItNames() {
    InventedJob job =
        new InventedJob()
            .meter("laser", DISTANCE, 0.001, 0)
            .read("standing", DISTANCE, "base.A1-base.A2", 5.968)
            .read("standing", DISTANCE, "base.A1-base.A3", 11.980)
            .read("standing", DISTANCE, "base.A1-base.A4", 17.936)
            .read("standing", DISTANCE, "base.A2-base.A3", 6.000, 0, 2)
            .read("standing", DISTANCE, "base.A3-base.A4", 5.968, 0, 2);
    StageFindings found =
        new Reduction(job.build(), "")
            .reduce(job.readings(), List.of(MovedThing.parse("column.A3")))
            .stage("standing")
            .orElseThrow();
    Outcome bay = found.outcome("frame-spacing", "A2-A3/base").orElseThrow();
    assertEquals(0, bay.deviation(), 1e-9);
    assertTrue(found.outcomes().stream().noneMatch(Outcome::stale));
    assertTrue(found.notes().stream().noneMatch(n -> n.kind() == Note.Kind.SLIP_SUSPECTED));
    assertTrue(bay.readingIds().contains("r001") && !bay.readingIds().contains("r002"));
  }

  @Test
  void eaveAgainstBaseIsTheirDifference() {
    Outcome match =
        new InventedJob()
            .meter("laser", DISTANCE, 0.001, 0.005)
            .read("tightening", DISTANCE, "base.A2-base.A3", 6.000)
            .read("tightening", DISTANCE, "eave.A2-eave.A3", 6.004)
            .reduced("tightening")
            .outcome("spacing-match", "A2-A3")
            .orElseThrow();
    assertEquals(0.004, match.deviation(), 1e-12);
    assertEquals(0.001 * Math.sqrt(2), match.standardUncertainty(), 1e-9);
  }

  @Test
  void clearSpanIsBetweenTheInnerFaces() {
    Outcome span =
        new InventedJob()
            .meter("laser", DISTANCE, 0.001, 0)
            .read("lift", DISTANCE, "base.A3-base.B3", 8.575)
            .read("lift", DISTANCE, "base.A3-base.B3", 8.577)
            .reduced("lift")
            .outcome("clear-span", "3/base")
            .orElseThrow();
    assertEquals(8.572, span.nominal().orElseThrow(), 1e-12);
    assertEquals(0.004, span.deviation(), 1e-12);
    assertEquals(0.001 / Math.sqrt(2), span.standardUncertainty(), 1e-9);
  }
}
