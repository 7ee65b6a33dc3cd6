package datumpeg.analysis.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.simulate.NormalDraws;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** Each rule on points that just meet it, and on points that just do not. */
class RunRulesTest {
  /** Two points give mean 0 and σ 1; the points of the case follow, and never count as ties. */
  private static List<String> said(RunRules rules, double... points) {
    double half = ControlChart.RANGE_OF_TWO / 2;
    double[] values =
        DoubleStream.concat(DoubleStream.of(half, -half), Arrays.stream(points)).toArray();
    ControlChart chart = ControlChart.individuals(values, 2).orElseThrow();
    return rules.signals(chart).stream().map(RunSignal::sentence).toList();
  }

  private static double[] repeated(int count, double... pattern) {
    double[] values = new double[count];
    Arrays.setAll(values, i -> pattern[i % pattern.length]);
    return values;
  }

  @Test
  void pointBeyondThreeSigma() {
    assertEquals(
        List.of("Point 3: above the control limit.", "Point 4: below the control limit."),
        said(RunRules.LIMITS_ONLY, 3.01, -3.01, 2.99, -2.99));
  }

  @Test
  void twoOfThreeBeyondTwoSigmaOnOneSide() {
    assertEquals(
        List.of("Points 3 to 5: 2 of 3 more than 2 standard deviations above the centre line."),
        said(RunRules.WESTERN_ELECTRIC, 2.1, 0.2, 2.1, -0.2));
    assertEquals(List.of(), said(RunRules.WESTERN_ELECTRIC, 2.1, 0.2, 0.1, 2.1));
    assertEquals(List.of(), said(RunRules.WESTERN_ELECTRIC, 2.1, -2.1, 0.1));
  }

  @Test
  void fourOfFiveBeyondOneSigmaOnOneSide() {
    assertEquals(
        List.of("Points 3 to 7: 4 of 5 more than 1 standard deviation below the centre line."),
        said(RunRules.WESTERN_ELECTRIC, -1.1, -1.2, 0.1, -1.1, -1.2));
    assertEquals(List.of(), said(RunRules.WESTERN_ELECTRIC, -1.1, -1.2, 0.1, -1.1, -0.9));
  }

  /** Western Electric asks for 8, Nelson for 9. */
  @Test
  void rowOnOneSideIsAsLongAsTheSetAsks() {
    double[] eight = repeated(8, 0.4, 0.6, 0.5);
    double[] nine = repeated(9, 0.4, 0.6, 0.5);
    assertEquals(
        List.of("Points 3 to 10: 8 or more in a row above the centre line."),
        said(RunRules.WESTERN_ELECTRIC, eight));
    assertEquals(List.of(), said(RunRules.NELSON, eight));
    assertEquals(
        List.of("Points 3 to 11: 9 or more in a row above the centre line."),
        said(RunRules.NELSON, nine));
  }

  /** Six points, which are five steps; equal points break the run. */
  @Test
  void steadyRiseOfSixPoints() {
    assertEquals(
        List.of("Points 3 to 8: 6 or more in a row rising steadily."),
        said(RunRules.NELSON, -0.9, -0.5, -0.1, 0.1, 0.5, 0.9));
    assertEquals(List.of(), said(RunRules.NELSON, -0.9, -0.5, -0.1, -0.1, 0.5, 0.9));
  }

  @Test
  void fourteenUpAndDown() {
    // The baseline's last point, −0.56, is the first of the row.
    assertEquals(
        List.of("Points 2 to 15: 14 or more in a row going up and down in turn."),
        said(RunRules.NELSON, repeated(13, -1.5, 0.5)));
    assertEquals(List.of(), said(RunRules.NELSON, repeated(12, -1.5, 0.5)));
  }

  @Test
  void fifteenNearTheCentreAndEightFarFromIt() {
    double[] near = repeated(16, 0.2, 0.3, -0.3, -0.2);
    assertTrue(
        said(RunRules.NELSON, near).stream().anyMatch(s -> s.contains("within 1 standard")),
        "near");
    assertTrue(said(RunRules.WESTERN_ELECTRIC, near).isEmpty());
    double[] far = repeated(8, 1.2, 1.3, -1.3, -1.2);
    assertEquals(
        List.of(
            "Points 3 to 10: 8 or more in a row more than 1 standard deviation from the centre line."),
        said(RunRules.NELSON, far));
  }

  @Test
  void runThatGoesOnIsToldOnce() {
    assertEquals(
        List.of("Points 3 to 30: 8 or more in a row above the centre line."),
        said(RunRules.WESTERN_ELECTRIC, repeated(28, 0.4, 0.6, 0.5)));
  }

  /**
   * Rules 1 to 4 of Western Electric cry wolf every 91.75 points on the average (C. W. Champ and W.
   * H. Woodall, Technometrics 29, 1987, recalled), over 2000 simulated charts.
   */
  @Test
  void fourZoneRulesCryWolfAsOftenAsPublished() {
    double sum = 0;
    int runs = 2000;
    for (int run = 0; run < runs; run++) {
      NormalDraws draws = new NormalDraws(100_000 + run);
      double[] values = new double[1202];
      Arrays.setAll(values, i -> draws.next());
      values[0] = ControlChart.RANGE_OF_TWO / 2;
      values[1] = -values[0];
      sum += pointsToFirstSignal(values);
    }
    assertEquals(91.75, sum / runs, 8);
  }

  /** The shortest beginning in which a rule speaks, less the two points of the baseline. */
  private static int pointsToFirstSignal(double[] values) {
    int silent = 2;
    int speaking = values.length;
    while (speaking - silent > 1) {
      int middle = (silent + speaking) / 2;
      ControlChart chart = ControlChart.individuals(Arrays.copyOf(values, middle), 2).orElseThrow();
      boolean speaks =
          RunRules.WESTERN_ELECTRIC.rules().stream()
              .limit(4)
              .anyMatch(rule -> !new RunSearch(chart, rule).signals().isEmpty());
      silent = speaks ? silent : middle;
      speaking = speaks ? middle : speaking;
    }
    return speaking - 2;
  }
}
