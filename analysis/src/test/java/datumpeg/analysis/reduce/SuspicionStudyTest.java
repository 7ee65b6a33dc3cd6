package datumpeg.analysis.reduce;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * A short form, with seeds, of the study in docs/benchmarks/slip-search.md: before the level was
 * shared among the tests of a stage, 17 of a hundred sound stages of tightening were doubted.
 */
class SuspicionStudyTest {
  private static final int STAGES = 60;

  private static double atMost(double share) {
    return STAGES * (share + 3 * Math.sqrt(share * (1 - share) / STAGES));
  }

  @Test
  void aSoundStageIsDoubtedInFiveOfAHundredCasesAtMost() {
    for (String stage : new String[] {"arrival", "assembly", "tightening"}) {
      int suspected = new SuspicionStudy(stage).suspected(STAGES, 0);
      assertTrue(suspected <= atMost(0.05), stage + ": " + suspected);
    }
  }

  @Test
  void oneWrongDistanceOfTheSlabIsDoubted() {
    int suspected = new SuspicionStudy("arrival").suspected(STAGES, 0.02);
    assertTrue(suspected >= 0.95 * STAGES, suspected + " of " + STAGES);
  }
}
