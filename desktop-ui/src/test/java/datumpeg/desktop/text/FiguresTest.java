package datumpeg.desktop.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.quantity.LengthDisplay;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FiguresTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();
  private static final Figures METRIC = Figures.in(LengthDisplay.METRIC);
  private static final Figures IMPERIAL = Figures.in(LengthDisplay.IMPERIAL);

  /** 25.4 mm to the inch, exactly (international yard and pound agreement of 1959). */
  @Test
  void whoReadsATapeInFeetGetsInchesAndFractions() {
    Outcome outcome = outcome(0.00635, of(-0.0127), of(0.0127), 0.5);
    assertEquals("+0.25 in", IMPERIAL.deviation(outcome));
    assertEquals("±0.5 in", IMPERIAL.limits(outcome).replace("0.50", "0.5"));
    assertEquals("in", IMPERIAL.symbol(OutcomeUnit.MILLIMETRE));
    assertEquals(0.25, IMPERIAL.shown(OutcomeUnit.MILLIMETRE, 0.00635), 1e-12);
    assertEquals("28' 1 1/2\"", IMPERIAL.size(8.5725));
    assertEquals("F", IMPERIAL.symbol(OutcomeUnit.F_NUMBER));
  }

  @Test
  void deviationHasATrueMinusAndOneDecimal() {
    assertEquals("−3.2 mm", METRIC.deviation(outcome(-0.00324, NONE, NONE, 0.5)));
    assertEquals("+3.2 mm", METRIC.deviation(outcome(0.00324, NONE, NONE, 0.5)));
    assertEquals("0.0 mm", METRIC.deviation(outcome(-0.00001, NONE, NONE, 0.5)));
  }

  @Test
  void equalLimitsAreWrittenOnceOthersBoth() {
    assertEquals("±8 mm", METRIC.limits(outcome(0, of(-0.008), of(0.008), 0.5)));
    assertEquals("±7.2 mm", METRIC.limits(outcome(0, of(-0.0072), of(0.0072), 0.5)));
    assertEquals("−10 … +5 mm", METRIC.limits(outcome(0, of(-0.010), of(0.005), 0.5)));
  }

  @Test
  void oneLimitAloneSaysWhichSide() {
    assertEquals("≤ 10 mm", METRIC.limits(outcome(0, NONE, of(0.010), 0.5)));
    assertEquals("≥ −4 mm", METRIC.limits(outcome(0, of(-0.004), NONE, 0.5)));
  }

  @Test
  void probabilityNeverReadsAsCertainty() {
    assertEquals("> 99.9 %", Figures.probability(outcome(0, NONE, of(0.01), 1)));
    assertEquals("< 0.1 %", Figures.probability(outcome(0, NONE, of(0.01), 0)));
    assertEquals("52.2 %", Figures.probability(outcome(0, NONE, of(0.01), 0.5218)));
  }

  @Test
  void outcomeWithoutLimitHasNeitherLimitNorProbability() {
    Outcome outcome =
        new Outcome(
            "clear-span",
            "3/eave",
            1,
            OutcomeUnit.MILLIMETRE,
            OptionalDouble.of(8.572),
            8.57,
            -0.002,
            0.0021,
            2,
            Optional.empty(),
            NONE,
            Optional.empty(),
            false,
            "",
            "",
            List.of());
    assertEquals("", METRIC.limits(outcome));
    assertEquals("", Figures.probability(outcome));
    assertEquals("8572.0 mm", METRIC.nominal(outcome));
    assertEquals("8570.0 mm", METRIC.measured(outcome));
    assertEquals("±2.1 mm", METRIC.uncertainty(outcome));
  }

  /** 8 mm are 0.315 in: one decimal would make 7.6 mm of them. */
  @Test
  void inchesHaveTwoDecimalsEverywhere() {
    assertEquals("+0.32", Figures.signed(0.315, "in"));
    assertEquals("−8.0", Figures.signed(-8, "mm"));
    assertEquals("−0.38 in", Figures.limit(-0.375, "in"));
    assertEquals("+10 mm", Figures.limit(10, "mm"));
    assertEquals("+7.2 mm", Figures.limit(7.2, "mm"));
    assertEquals("+100 mm", Figures.limit(100, "mm"));
  }

  @Test
  void axisNumbersAreBare() {
    assertEquals("+5", Figures.tick(5));
    assertEquals("−2.5", Figures.tick(-2.5));
    assertEquals("0", Figures.tick(0));
  }

  @Test
  void timesAreThoseOfTheZone() {
    Instant at = Instant.parse("2026-03-04T23:15:31Z");
    assertEquals("2026-03-05 01:15", Figures.minute(at, ZoneOffset.ofHours(2)));
    assertEquals("23:15:31", Figures.second(at, ZoneOffset.UTC));
  }

  private static OptionalDouble of(double value) {
    return OptionalDouble.of(value);
  }

  private static Outcome outcome(
      double deviation, OptionalDouble lower, OptionalDouble upper, double probability) {
    return new Outcome(
        "slab-square",
        "A1",
        1,
        OutcomeUnit.MILLIMETRE,
        NONE,
        deviation,
        deviation,
        0.002,
        2,
        Optional.of(new Limits(lower, upper, "invented")),
        OptionalDouble.of(probability),
        Optional.of(Verdict.UNDECIDED),
        false,
        "",
        "",
        List.of());
  }
}
