package datumpeg.analysis.reduce;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static datumpeg.analysis.measuring.MeasuredQuantity.HEIGHT;
import static datumpeg.analysis.measuring.MeasuredQuantity.OFFSET;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import org.junit.jupiter.api.Test;

class DoubtedResultsTest {
  private static Outcome outcome(StageFindings found, String check, String target) {
    return found.outcome(check, target).orElseThrow();
  }

  private static InventedJob spans(double again) {
    return new InventedJob()
        .meter("laser", DISTANCE, 0.0005, 0)
        .limit("clear-span", 0.010)
        .read("lift", DISTANCE, "base.A2-base.B2", 8.572)
        .read("lift", DISTANCE, "base.A2-base.B2", again)
        .read("lift", DISTANCE, "base.A3-base.B3", 8.572);
  }

  /**
   * 11 mm apart: the mean is 5.5 mm from either, so u² = 5.5² + 0.5²/2 mm² and a limit of 10 mm is
   * too close to call; read as it should be, it conforms.
   */
  @Test
  void theMeanOfContradictingReadingsIsKnownNoBetterThanTheyAre() {
    StageFindings found = spans(8.583).reduced("lift");
    Outcome span = outcome(found, "clear-span", "2/base");
    assertEquals(0.0055, span.deviation(), 1e-12);
    assertEquals(Math.sqrt(5.5 * 5.5 + 0.125) / 1000, span.standardUncertainty(), 1e-9);
    assertTrue(span.is(Verdict.UNDECIDED), span.toString());
    assertTrue(span.aside().contains("U holds 5.5 mm for readings that contradict"), span.aside());
    assertTrue(
        outcome(spans(8.573).reduced("lift"), "clear-span", "2/base").is(Verdict.CONFORMING));
  }

  @Test
  void whatNobodyContradictsIsDecidedAsBefore() {
    StageFindings found = spans(8.583).reduced("lift");
    Outcome other = outcome(found, "clear-span", "3/base");
    assertEquals(0.0005, other.standardUncertainty(), 1e-12);
    assertTrue(other.is(Verdict.CONFORMING));
    assertEquals("", other.aside());
    assertEquals(Answer.Kind.MEASURE_AGAIN, found.answer().kind());
    assertFalse(found.answer().sentence().contains("sure"), found.answer().sentence());
  }

  /** A side of the slab read twice, 11 mm apart, among five that fit the first. */
  @Test
  void aNetworkThatHoldsBothIsKnownNoBetterEither() {
    double right = Math.sqrt(18 * 18 + 81);
    InventedJob job = new InventedJob().meter("laser", DISTANCE, 0.0005, 0);
    StageFindings found =
        job.limit("slab-size", 0.005)
            .read("arrival", DISTANCE, "slab.A1-slab.A4", 18)
            .read("arrival", DISTANCE, "slab.A1-slab.A4", 18.011)
            .read("arrival", DISTANCE, "slab.A4-slab.B4", 9)
            .read("arrival", DISTANCE, "slab.B4-slab.B1", 18)
            .read("arrival", DISTANCE, "slab.B1-slab.A1", 9)
            .read("arrival", DISTANCE, "slab.A1-slab.B4", right)
            .read("arrival", DISTANCE, "slab.A4-slab.B1", right)
            .reduced("arrival");
    Outcome side = outcome(found, "slab-size", "A1-A4");
    assertTrue(side.standardUncertainty() > 0.003, side.toString());
    assertTrue(side.is(Verdict.UNDECIDED), side.toString());
    assertEquals(Answer.Kind.MEASURE_AGAIN, found.answer().kind());
  }

  /**
   * Two readings of one level 11 mm apart: the spread holds the 5.5 mm that either would change.
   */
  @Test
  void spreadsAndMaximaHoldItToo() {
    InventedJob job = new InventedJob().meter("level", HEIGHT, 0.0005, 0);
    job.meter("rule", OFFSET, 0.0005, 0).limit("slab-level", 0.010).limit("slab-flatness", 0.010);
    job.read("arrival", HEIGHT, "slab.A1", 0)
        .read("arrival", HEIGHT, "slab.A1", 0.011)
        .read("arrival", HEIGHT, "slab.A4", 0)
        .read("arrival", HEIGHT, "slab.B4", 0)
        .read("arrival", OFFSET, "slab.@(3;3)", 0.001)
        .read("arrival", OFFSET, "slab.@(3;3)", 0.012)
        .read("arrival", OFFSET, "slab.@(9;3)", 0.001);
    StageFindings found = job.reduced("arrival");
    Outcome level = outcome(found, "slab-level", "slab");
    assertEquals(0.0055, level.deviation(), 1e-9);
    assertTrue(level.standardUncertainty() > 0.0055 / Math.sqrt(2), level.toString());
    assertTrue(level.is(Verdict.UNDECIDED), level.toString());
    Outcome gap = outcome(found, "slab-flatness", "straightedge");
    assertTrue(gap.standardUncertainty() > 0.0055, gap.toString());
    assertTrue(gap.is(Verdict.UNDECIDED), gap.toString());
  }
}
