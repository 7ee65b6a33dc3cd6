package datumpeg.desktop.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.analysis.conform.Outcome;
import datumpeg.desktop.source.InventedJobs;
import org.junit.jupiter.api.Test;

class StandingTest {
  @Test
  void verdictDecidesUnlessSomethingWasMovedSince() {
    Outcome outcome = InventedJobs.outcome("column-plumb", "A3/across", 1, 13.4, 7.2, "");
    assertEquals(Standing.NONCONFORMING, Standing.of(outcome));
    Outcome stale =
        new Outcome(
            outcome.check(),
            outcome.target(),
            1,
            outcome.unit(),
            outcome.nominal(),
            outcome.measured(),
            outcome.deviation(),
            outcome.expandedUncertainty(),
            2,
            outcome.limits(),
            outcome.probability(),
            outcome.verdict(),
            true,
            "",
            "",
            outcome.readingIds());
    assertEquals(Standing.STALE, Standing.of(stale));
  }

  @Test
  void valueWithoutLimitIsNotCalledConforming() {
    assertEquals(
        Standing.NO_LIMIT, Standing.of(InventedJobs.outcome("clear-span", "3/eave", 1, 4, 0, "")));
  }
}
