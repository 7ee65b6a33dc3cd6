package datumpeg.analysis.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.JobIdentity;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TrendSeriesTest {
  private static final JobIdentity ALDER = Invented.job("alder-1", "Amber", "Alder", "Stonecroft");
  private static final JobIdentity BIRCH = Invented.job("birch-2", "Blue", "Birch", "Millgate");

  /** Alder after Birch in time; its column A1 was put right in a second round. */
  private static final List<DatedOutcome> TWO_JOBS =
      List.of(
          Invented.dated(ALDER, 9, "tilt-1", Invented.outcome("A1/across", 1, 12, 8)),
          Invented.dated(ALDER, 10, "tilt-1", Invented.outcome("A1/across", 2, 2, 8)),
          Invented.dated(ALDER, 9, "tilt-1", Invented.outcome("A1/along", 1, -4, 8)),
          Invented.dated(BIRCH, 3, "tilt-2", Invented.outcome("B1/across", 1, 6, 12)));

  private static TrendSeries series(
      TrendFilter filter, RoundChoice rounds, PointPer per, TrendScale scale) {
    return TrendSeries.of(TWO_JOBS, new TrendQuestion(filter, rounds, per, scale));
  }

  private static List<String> names(TrendSeries series) {
    return series.points().stream().map(TrendPoint::name).toList();
  }

  @Test
  void firstRoundIsTheProcessAndLastWhatWasDelivered() {
    TrendFilter all = TrendFilter.of("column-plumb");
    TrendSeries first = series(all, RoundChoice.FIRST, PointPer.TARGET, TrendScale.AS_MEASURED);
    assertEquals(
        List.of("birch-2 B1/across", "alder-1 A1/across", "alder-1 A1/along").stream()
            .sorted()
            .toList(),
        names(first).stream().sorted().toList());
    assertEquals("birch-2 B1/across", names(first).get(0));
    assertEquals(List.of(6.0, 12.0, -4.0).stream().sorted().toList(), sorted(first));
    assertEquals(
        List.of(-4.0, 2.0, 6.0),
        sorted(series(all, RoundChoice.LAST, PointPer.TARGET, TrendScale.AS_MEASURED)));
  }

  private static List<Double> sorted(TrendSeries series) {
    return java.util.Arrays.stream(series.values())
        .map(v -> Math.rint(v * 1e9) / 1e9)
        .sorted()
        .boxed()
        .toList();
  }

  /** 12 of ±8 mm is 150 %, 6 of ±12 mm is 50 %; u = 1 mm is 12.5 % of ±8 mm. */
  @Test
  void scaledByWhatIsPermittedBuildingsCompare() {
    TrendSeries series =
        series(
            TrendFilter.of("column-plumb"),
            RoundChoice.FIRST,
            PointPer.TARGET,
            TrendScale.OF_PERMITTED);
    assertEquals(List.of(-50.0, 50.0, 150.0), sorted(series));
    assertEquals("%", series.unit());
    TrendPoint steep =
        series.points().stream().filter(p -> p.value() > 100).findFirst().orElseThrow();
    assertEquals(12.5, steep.standardUncertainty(), 1e-9);
    assertEquals(100, steep.upper().orElseThrow(), 1e-9);
    assertEquals(-100, steep.lower().orElseThrow(), 1e-9);
  }

  @Test
  void lopsidedAndOneSidedLimitsHaveTheirOwnMiddle() {
    Outcome lopsided =
        Invented.outcome(
            "A1/across",
            1,
            5,
            Optional.of(
                new Limits(OptionalDouble.of(-0.010), OptionalDouble.of(0.005), "invented")),
            false);
    assertEquals(100, TrendScale.OF_PERMITTED.value(lopsided), 1e-9);
    assertEquals(-100, TrendScale.OF_PERMITTED.lower(lopsided).orElseThrow(), 1e-9);
    Outcome unsigned =
        Invented.outcome(
            "slab",
            1,
            5,
            Optional.of(new Limits(OptionalDouble.empty(), OptionalDouble.of(0.010), "invented")),
            false);
    assertEquals(50, TrendScale.OF_PERMITTED.value(unsigned), 1e-9);
    Outcome atLeast =
        Invented.outcome(
            "slab",
            1,
            5,
            Optional.of(new Limits(OptionalDouble.of(0.001), OptionalDouble.empty(), "invented")),
            false);
    assertFalse(TrendScale.OF_PERMITTED.fits(atLeast));
    assertFalse(TrendScale.OF_PERMITTED.fits(Invented.outcome("A1", 1, 3, 0)));
    assertTrue(TrendScale.AS_MEASURED.fits(atLeast));
  }

  /** Mean of 12 and −4; both outcomes may share their error, so that u stays 1 mm. */
  @Test
  void jobIsTheMeanOfItsOutcomesWithoutLimitsOfItsOwn() {
    TrendSeries series =
        series(
            TrendFilter.of("column-plumb"),
            RoundChoice.FIRST,
            PointPer.JOB,
            TrendScale.AS_MEASURED);
    assertEquals(List.of("birch-2 B1/across", "alder-1"), names(series));
    TrendPoint alder = series.points().get(1);
    assertEquals(4, alder.value(), 1e-9);
    assertEquals(1, alder.standardUncertainty(), 1e-9);
    assertTrue(alder.upper().isEmpty());
    assertEquals(2, series.jobCount());
  }

  @Test
  void filtersLeaveOutWhatIsNotAskedFor() {
    TrendFilter all = TrendFilter.of("column-plumb");
    Optional<Instant> noon = Optional.of(Instant.parse("2026-03-06T12:00:00Z"));
    assertEquals(
        1,
        points(
            new TrendFilter(
                "column-plumb", "", "", "Blue", "", "", "", Optional.empty(), Optional.empty())));
    assertEquals(
        2,
        points(
            new TrendFilter(
                "column-plumb", "", "", "", "Alder", "", "", Optional.empty(), Optional.empty())));
    assertEquals(
        1,
        points(
            new TrendFilter(
                "column-plumb", "", "", "", "", "tilt-2", "", Optional.empty(), Optional.empty())));
    assertEquals(
        1,
        points(
            new TrendFilter(
                "column-plumb",
                "",
                "",
                "",
                "",
                "",
                "Millgate",
                Optional.empty(),
                Optional.empty())));
    assertEquals(
        2,
        points(
            new TrendFilter(
                "column-plumb",
                "/across",
                "",
                "",
                "",
                "",
                "",
                Optional.empty(),
                Optional.empty())));
    assertEquals(
        1,
        points(
            new TrendFilter(
                "column-plumb",
                "A1/along",
                "",
                "",
                "",
                "",
                "",
                Optional.empty(),
                Optional.empty())));
    assertEquals(
        2, points(new TrendFilter("column-plumb", "", "", "", "", "", "", noon, Optional.empty())));
    assertEquals(
        1, points(new TrendFilter("column-plumb", "", "", "", "", "", "", Optional.empty(), noon)));
    assertEquals(
        0,
        points(
            new TrendFilter(
                "column-plumb",
                "",
                "handover",
                "",
                "",
                "",
                "",
                Optional.empty(),
                Optional.empty())));
    assertEquals(0, points(all.withCheck("slab-size")));
  }

  private static int points(TrendFilter filter) {
    return series(filter, RoundChoice.FIRST, PointPer.TARGET, TrendScale.AS_MEASURED)
        .points()
        .size();
  }

  @Test
  void whatIsLeftOutIsCounted() {
    DatedOutcome stale =
        Invented.dated(BIRCH, 1, "t", Invented.outcome("B2/across", 1, 1, Optional.empty(), true));
    DatedOutcome free = Invented.dated(BIRCH, 1, "t", Invented.outcome("B3/across", 1, 1, 0));
    TrendSeries series =
        TrendSeries.of(
            List.of(TWO_JOBS.get(3), stale, free),
            new TrendQuestion(
                TrendFilter.of("column-plumb"),
                RoundChoice.LAST,
                PointPer.TARGET,
                TrendScale.OF_PERMITTED));
    assertEquals(1, series.points().size());
    assertEquals(1, series.stale());
    assertEquals(1, series.withoutLimit());
    assertEquals(0, series.otherUnit());
  }

  @Test
  void noOutcomesMakeAnEmptySeries() {
    TrendSeries series = TrendSeries.of(List.of(), TrendQuestion.of("column-plumb"));
    assertEquals(List.of(), series.points());
    assertEquals("", series.unit());
    assertEquals(0, series.jobCount());
  }

  /** √(2² + 2²) = 2.83 mm: −10 mm is more, +2 mm is not. */
  @Test
  void changeIsHeldAgainstItsUncertainty() {
    RoundChange corrected = new RoundChange(TWO_JOBS.get(0).outcome(), TWO_JOBS.get(1).outcome());
    assertEquals(-0.010, corrected.change(), 1e-12);
    assertEquals(0.0028284, corrected.expandedUncertainty(), 1e-7);
    assertTrue(corrected.moved());
    assertFalse(
        new RoundChange(Invented.outcome("A", 1, 2, 8), Invented.outcome("A", 2, 4, 8)).moved());
  }
}
