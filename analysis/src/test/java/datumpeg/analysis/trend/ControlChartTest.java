package datumpeg.analysis.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.simulate.NormalDraws;
import datumpeg.analysis.stat.StudentizedRange;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class ControlChartTest {
  /** NIST/SEMATECH e-Handbook, 6.3.2.2: flow rates of ten batches. */
  private static final double[] FLOW = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};

  /** Same handbook, 6.3.2.4. */
  private static final double[] TWENTY = {
    52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5,
    49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1
  };

  private static ControlChart individuals(double... values) {
    return ControlChart.individuals(values, 0).orElseThrow();
  }

  /** Printed: mean 50.81, mean range 1.8778, limits 55.8041 and 45.8159 with d2 = 1.128. */
  @Test
  void handbooksIndividuals() {
    ControlChart chart = individuals(FLOW);
    assertEquals(50.81, chart.centre(), 1e-9);
    assertEquals(1.8778, chart.meanRange(), 5e-5);
    assertEquals(55.8041, chart.upper(0), 2e-3);
    assertEquals(45.8159, chart.lower(9), 2e-3);
    assertEquals(55.8024, chart.upper(0), 5e-5);
    assertEquals(6.1347, chart.rangeLimit(), 1e-3);
    assertEquals(List.of(), RunRules.LIMITS_ONLY.signals(chart));
  }

  /** d2 of two and D4 of two as tables print them, and d2 by the integral of room stat. */
  @Test
  void constantsOfRangesOfTwo() {
    assertEquals(1.128, ControlChart.RANGE_OF_TWO, 5e-4);
    assertEquals(StudentizedRange.expectedRange(2), ControlChart.RANGE_OF_TWO, 1e-12);
    assertEquals(3.267, ControlChart.RANGE_LIMIT, 1e-3);
  }

  /**
   * Printed with target 50, s 2.0539 and weight 0.3: 50.60 … 51.99, settled limits 52.5884 and
   * 47.4115. Values are moved and stretched here so that centre and σ are those.
   */
  @Test
  void handbooksMovingAverage() {
    List<Double> printed =
        List.of(
            50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36,
            49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99);
    double[] values = withBaseline(50, 2.0539, TWENTY);
    ControlChart chart = ControlChart.movingAverage(values, 2, 0.3).orElseThrow();
    assertEquals(50, chart.centre(), 1e-9);
    assertEquals(2.0539, chart.sigma(), 1e-9);
    // The two values of the baseline come first; their average is brought back to the target.
    double average = 50;
    for (int i = 0; i < TWENTY.length; i++) {
      average = 0.3 * TWENTY[i] + 0.7 * average;
      double shift = StrictMath.pow(0.7, i + 1) * (chart.plotted(1) - 50);
      assertEquals(printed.get(i), chart.plotted(i + 2) - shift, 5.1e-3);
    }
    assertEquals(52.5884, chart.upper(21), 1e-3);
    assertEquals(47.4115, chart.lower(21), 1e-3);
    assertEquals(1.84851, chart.halfWidth(0), 5e-5);
    assertEquals(2.25639, chart.halfWidth(1), 5e-5);
    assertEquals(2.43141, chart.halfWidth(2), 5e-5);
  }

  /** Two values with that mean and moving range, then the others. */
  private static double[] withBaseline(double mean, double sigma, double[] others) {
    double half = sigma * ControlChart.RANGE_OF_TWO / 2;
    double[] values = new double[others.length + 2];
    values[0] = mean - half;
    values[1] = mean + half;
    System.arraycopy(others, 0, values, 2, others.length);
    return values;
  }

  @Test
  void limitsComeFromTheBaselineAlone() {
    double[] later = Arrays.copyOf(FLOW, 12);
    later[10] = 70;
    later[11] = 30;
    ControlChart chart = ControlChart.individuals(later, 10).orElseThrow();
    assertEquals(individuals(FLOW).upper(0), chart.upper(11), 1e-12);
    assertEquals(10, chart.baseline());
    assertEquals(
        List.of("Point 11: above the control limit.", "Point 12: below the control limit."),
        RunRules.LIMITS_ONLY.signals(chart).stream().map(RunSignal::sentence).toList());
  }

  @Test
  void fewerThanTwoValuesGiveNoChart() {
    assertTrue(ControlChart.individuals(new double[0], 0).isEmpty());
    assertTrue(ControlChart.individuals(new double[] {3}, 0).isEmpty());
    assertTrue(ControlChart.individuals(FLOW, 1).isEmpty());
    assertEquals(10, ControlChart.individuals(FLOW, 99).orElseThrow().baseline());
  }

  @Test
  void equalValuesHaveLimitsOnTheCentreLineAndNoSignal() {
    ControlChart chart = individuals(4, 4, 4, 4, 4, 4, 4, 4, 4, 4);
    assertEquals(0, chart.sigma());
    assertEquals(4, chart.upper(3));
    assertEquals(List.of(), RunRules.WESTERN_ELECTRIC.signals(chart));
    ControlChart left = ControlChart.individuals(new double[] {4, 4, 4, 5}, 3).orElseThrow();
    assertEquals(1, RunRules.LIMITS_ONLY.signals(left).size());
  }

  @Test
  void whatIsNoNumberIsRefused() {
    double[] wrong = {1, Double.NaN};
    assertThrows(IllegalArgumentException.class, () -> ControlChart.individuals(wrong, 0));
    assertThrows(IllegalArgumentException.class, () -> ControlChart.movingAverage(FLOW, 0, 1.2));
  }

  /**
   * Of chance alone 1 point in 370.4 lies beyond three standard deviations (normal distribution).
   * 400,000 points, of which about 1080 ± 33 should be flagged.
   */
  @Test
  void limitsCryWolfAsOftenAsTheNormalDistributionSays() {
    NormalDraws draws = new NormalDraws(20260302);
    double[] values = new double[400_000];
    Arrays.setAll(values, i -> draws.next());
    ControlChart chart = individuals(values);
    assertEquals(1, chart.sigma(), 0.005);
    int flagged = RunRules.LIMITS_ONLY.signals(chart).size();
    assertEquals(400_000 / 370.4, flagged, 4 * 33);
  }

  /** A shift of one standard deviation: the average sees it, on the average, far sooner. */
  @Test
  void averageSeesASmallLastingShiftSooner() {
    assertTrue(pointsUntilSeen(0.2) < pointsUntilSeen(1) / 2);
  }

  private static double pointsUntilSeen(double weight) {
    double sum = 0;
    for (int run = 0; run < 300; run++) {
      NormalDraws draws = new NormalDraws(9000 + run);
      double[] values = new double[1000];
      Arrays.setAll(values, i -> draws.next() + (i < 500 ? 0 : 1));
      ControlChart chart = ControlChart.movingAverage(values, 500, weight).orElseThrow();
      sum +=
          RunRules.LIMITS_ONLY.signals(chart).stream()
              .mapToInt(RunSignal::first)
              .filter(first -> first >= 500)
              .map(first -> first - 499)
              .findFirst()
              .orElse(500);
    }
    return sum / 300;
  }
}
