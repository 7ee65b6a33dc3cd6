package datumpeg.analysis.reduce;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.measuring.CheckNames;
import java.util.Map;
import java.util.Set;
import org.hipparchus.stat.descriptive.StreamingStatistics;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The short form of the study whose table stands in docs/benchmarks/coverage.md: 60 jobs, always
 * the same. A share may miss its mark by what 60 jobs leave open, 3.5 standard uncertainties.
 */
class CoverageTest {
  private static final int JOBS = 60;
  private static final double CHANCE = 3.5;

  private static CoverageStudy study = new CoverageStudy();

  @BeforeAll
  static void run() {
    study = CoverageStudy.of(JOBS, 1);
  }

  @Test
  void theFirstChecksAreStudied() {
    Set<String> studied = study.tallies().keySet();
    assertTrue(
        studied.containsAll(
            Set.of("slab-size", "slab-square", "slab-level", "column-plumb", "frame-spacing")),
        studied.toString());
    study.tallies().values().forEach(tally -> assertTrue(tally.jobs() >= JOBS / 2));
    assertEquals(Set.of(), study.withoutTruth());
    assertEquals(Set.copyOf(CheckNames.ALL), studied);
  }

  @Test
  void intervalsOfSignedQuantitiesHoldTheTruthInNinetyFiveOfAHundredCases() {
    study
        .tallies()
        .forEach(
            (check, tally) -> {
              if (tally.kind() == TrueValues.Kind.SIGNED) {
                assertEquals(
                    0.95, tally.coverage(), 0.02 + CHANCE * tally.coverageUncertainty(), check);
              }
            });
  }

  @Test
  void signedQuantitiesAreFoundWithoutBias() {
    study
        .tallies()
        .forEach(
            (check, tally) -> {
              if (tally.kind() == TrueValues.Kind.SIGNED) {
                double ofMean = tally.meanExpandedUncertaintyMetres() / 2 / Math.sqrt(JOBS);
                assertEquals(0, tally.biasMetres(), CHANCE * ofMean, check);
              }
            });
  }

  @Test
  void spreadsAreReadTooLargeAndNeverMuchTooSmall() {
    study
        .tallies()
        .forEach(
            (check, tally) -> {
              if (tally.kind() == TrueValues.Kind.SPREAD) {
                double ofMean = tally.meanExpandedUncertaintyMetres() / 2 / Math.sqrt(JOBS);
                assertTrue(tally.biasMetres() > -CHANCE / 2 * ofMean, check);
                assertTrue(
                    tally.coverage() >= 0.95 - CHANCE * Math.sqrt(0.05 * 0.95 / JOBS), check);
              }
            });
  }

  @Test
  void atMostFiveInAHundredAreDecidedWrongly() {
    study
        .tallies()
        .forEach(
            (check, tally) -> {
              assertTrue(tally.falseAcceptance() <= allowed(tally.outside()), check);
              assertTrue(tally.falseRejection() <= allowed(tally.inside()), check);
            });
  }

  private static double allowed(long cases) {
    double independent = Math.max(1, Math.min(cases, JOBS));
    return 0.05 + CHANCE * Math.sqrt(0.05 * 0.95 / independent);
  }

  /**
   * No reading has a slip: what is known of the errors explains the misclosures, no more, no less.
   */
  @Test
  void networksFitAsWellAsTheirReadingsAreStated() {
    for (Map.Entry<String, StreamingStatistics> network : study.varianceFactors().entrySet()) {
      StreamingStatistics factor = network.getValue();
      double chance = CHANCE * factor.getStandardDeviation() / Math.sqrt((double) factor.getN());
      assertEquals(1, factor.getMean(), 0.1 + chance, network.getKey());
    }
  }
}
