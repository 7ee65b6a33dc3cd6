package datumpeg.analysis.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.simulate.NormalDraws;
import datumpeg.analysis.stat.StudentT;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.Invented;
import datumpeg.analysis.trend.TrendQuestion;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class ComparisonTest {
  private static final TrendQuestion PLUMB = TrendQuestion.of("column-plumb");

  private final Comparer comparer = new Comparer();

  /** NIST/SEMATECH e-Handbook, 7.4.3.6, taken as job means of four crews in millimetres. */
  private static final double[][] FOUR_GROUPS = {
    {6.9, 5.4, 5.8, 4.6, 4.0},
    {8.3, 6.8, 7.8, 9.2, 6.5},
    {8.0, 10.5, 8.1, 6.9, 9.3},
    {5.8, 3.8, 6.1, 5.6, 6.2}
  };

  private static List<DatedOutcome> jobsOf(String crew, String meter, double... means) {
    List<DatedOutcome> outcomes = new ArrayList<>();
    for (int i = 0; i < means.length; i++) {
      outcomes.add(outcome(crew, i, meter, "A1/across", means[i]));
    }
    return outcomes;
  }

  private static DatedOutcome outcome(
      String crew, int number, String meter, String target, double deviation) {
    return Invented.dated(
        Invented.job(
            crew.toLowerCase(java.util.Locale.ROOT) + "-" + number,
            crew,
            "Site " + number,
            "Stonecroft"),
        number,
        meter,
        Invented.outcome(target, 1, deviation, 8));
  }

  private Comparison byCrew(List<DatedOutcome> outcomes) {
    return comparer.compare(outcomes, PLUMB, Factor.CREW, 1);
  }

  private Comparison ofFourGroups() {
    List<DatedOutcome> outcomes = new ArrayList<>();
    for (int i = 0; i < FOUR_GROUPS.length; i++) {
      outcomes.addAll(jobsOf("Crew" + (i + 1), "tilt-1", FOUR_GROUPS[i]));
    }
    return byCrew(outcomes);
  }

  /**
   * Half-widths by scipy 1.17's studentized range with Welch's degrees of freedom rounded down: 7
   * for all pairs here but where they are 7.89 and more.
   */
  @Test
  void differencesOfFourGroups() {
    Comparison comparison = ofFourGroups();
    assertEquals(6, comparison.differences().size());
    Difference first = comparison.differences().get(0);
    assertEquals(2.38, first.difference(), 1e-9);
    assertEquals(7, first.degreesOfFreedom());
    assertEquals(2.32420, first.halfWidth(), 1e-5);
    assertTrue(first.isShown());
    Difference alike = comparison.differences().get(2);
    assertEquals("Crew4", alike.other());
    assertEquals(0.16, alike.difference(), 1e-9);
    assertFalse(alike.isShown());
    assertEquals(0.16 - alike.halfWidth(), alike.lower(), 1e-12);
  }

  /** For two groups the joint interval is Welch's t interval: another route. */
  @Test
  void twoGroupsHaveWelchsInterval() {
    List<DatedOutcome> outcomes = jobsOf("Amber", "t", FOUR_GROUPS[0]);
    outcomes.addAll(jobsOf("Blue", "t", FOUR_GROUPS[1]));
    Difference difference = byCrew(outcomes).differences().get(0);
    double error = Math.sqrt((1.248 + 1.217) / 5);
    double t = StudentT.quantile(0.975, difference.degreesOfFreedom());
    assertEquals(t * error, difference.halfWidth(), 1e-3);
  }

  /** Mean 5.34 and s 1.117 of five jobs, t(4) = 2.776; u = 1 mm taken out leaves 0.498. */
  @Test
  void groupHasMeanIntervalAndItsSpreadWithoutMeasuring() {
    ComparedGroup group = ofFourGroups().groups().get(0);
    assertEquals(5.34, group.mean(), 1e-9);
    assertEquals(1.1171, group.observedSpread().orElseThrow(), 1e-4);
    assertEquals(1, group.measuringPart(), 1e-9);
    assertEquals(0.4980, group.ownSpread().orElseThrow(), 1e-4);
    assertEquals(2.7764 * 1.1171 / Math.sqrt(5), group.halfWidth().orElseThrow(), 1e-3);
    assertEquals(5, group.jobCount());
    assertEquals(5, group.outcomeCount());
  }

  @Test
  void jobsThatAgreeByChanceAreNotKnownBetterThanTheyWereMeasured() {
    ComparedGroup group = byCrew(jobsOf("Amber", "t", 3, 3, 3, 3)).groups().get(0);
    assertEquals(0, group.ownSpread().orElseThrow());
    assertEquals(3.1824 / 2, group.halfWidth().orElseThrow(), 1e-3);
  }

  @Test
  void crewAndMeterThatNeverVaryApartAreNamed() {
    List<DatedOutcome> tied = jobsOf("Amber", "tilt-1", 1, 2, 3);
    tied.addAll(jobsOf("Blue", "tilt-2", 9, 10, 11));
    assertEquals(
        "Crew and meter never vary apart: Amber only with tilt-1, Blue only with tilt-2. Whether"
            + " crew or meter makes a difference cannot be told from these jobs.",
        sentence(byCrew(tied), "Crew and meter"));
    assertTrue(
        byCrew(tied).sentences().stream().noneMatch(s -> s.contains("slab layer never")),
        "one slab layer for all is no tie");
    tied.add(outcome("Blue", 3, "tilt-1", "A1/across", 10));
    assertEquals("", sentence(byCrew(tied), "Crew and meter"));
    assertEquals(
        "The jobs also differ in site and meter; the means are not corrected for that.",
        sentence(byCrew(tied), "The jobs also"));
  }

  @Test
  void chainOfSharedMetersHoldsCrewsApart() {
    List<DatedOutcome> chain = jobsOf("Amber", "tilt-1", 1, 2);
    chain.addAll(jobsOf("Blue", "tilt-1", 1, 2));
    chain.add(outcome("Blue", 7, "tilt-2", "A1/across", 2));
    chain.addAll(jobsOf("Coral", "tilt-2", 1, 2));
    assertEquals("", sentence(byCrew(chain), "Crew and meter"));
  }

  private static String sentence(Comparison comparison, String beginning) {
    return comparison.sentences().stream()
        .filter(sentence -> sentence.startsWith(beginning))
        .findFirst()
        .orElse("");
  }

  @Test
  void fewJobsSayHowLargeADifferenceWouldHaveToBe() {
    List<DatedOutcome> outcomes = jobsOf("Amber", "t", 1, 3);
    outcomes.addAll(jobsOf("Blue", "t", 4, 2));
    Comparison comparison = byCrew(outcomes);
    assertEquals(
        "No difference in mean is shown between Amber and Blue; that does not say they are alike:"
            + " from these jobs only a difference above 6.1 mm would show.",
        sentence(comparison, "No difference in mean"));
    assertEquals(
        "Spread cannot be compared: that needs three jobs or more of two crews.",
        sentence(comparison, "Spread"));
    assertTrue(sentence(comparison, "The smallest group").contains("2 jobs"));
  }

  @Test
  void singleJobsAndSingleGroupsAreSaidToProveNothing() {
    List<DatedOutcome> outcomes = jobsOf("Amber", "t", 1);
    assertEquals(
        List.of(
            "Only one crew has outcomes of this check (Amber), so there is nothing to compare."),
        byCrew(outcomes).sentences());
    outcomes.addAll(jobsOf("Blue", "t", 2));
    Comparison comparison = byCrew(outcomes);
    assertEquals(List.of(), comparison.differences());
    assertTrue(sentence(comparison, "One job alone").endsWith("Amber, Blue."));
    assertTrue(comparison.groups().get(0).halfWidth().isEmpty());
    assertEquals(
        List.of("No job has an outcome of this check, so there is nothing to compare."),
        byCrew(List.of()).sentences());
  }

  @Test
  void spreadWithinJobsIsJudgedByJobs() {
    List<DatedOutcome> outcomes = new ArrayList<>();
    for (int job = 0; job < 6; job++) {
      for (int column = 0; column < 6; column++) {
        double out = column - 2.5 + 0.1 * job;
        outcomes.add(outcome("Amber", job, "t", "A" + column + "/across", out));
        outcomes.add(outcome("Blue", job, "t", "A" + column + "/across", 3 * out));
      }
    }
    Comparison comparison = byCrew(outcomes);
    assertEquals(36, comparison.groups().get(0).outcomeCount());
    assertTrue(comparison.spread().withinJobs().orElseThrow() < 1e-6);
    assertTrue(sentence(comparison, "The crews are not equally spread").contains("within jobs"));
    double scatter = comparison.groups().get(0).meanScatter().orElseThrow();
    assertEquals(1.5 * Math.sqrt(6 / 5.0), scatter, 1e-9);
  }

  /** Scatters of 0.71 and 0.78 mm, each the same in every job: no chance, but within u = 1 mm. */
  @Test
  void differenceOfSpreadThatCannotBeMeasuredIsNotClaimed() {
    List<DatedOutcome> outcomes = new ArrayList<>();
    for (int job = 0; job < 4; job++) {
      for (int column = 0; column < 2; column++) {
        double little = 0.001 * job;
        outcomes.add(outcome("Amber", job, "t", "A" + column + "/across", column + little));
        outcomes.add(outcome("Blue", job, "t", "A" + column + "/across", 1.1 * column + little));
      }
    }
    Comparison comparison = byCrew(outcomes);
    assertTrue(comparison.spread().withinJobs().orElseThrow() < 1e-6);
    assertTrue(
        comparison.sentences().stream()
            .anyMatch(s -> s.startsWith("No difference in spread beyond measuring is shown")),
        comparison.sentences().toString());
  }

  @Test
  void outcomesReadWithTwoMetersBelongToNone() {
    DatedOutcome both =
        new DatedOutcome(
            Invented.job("alder-1", "Amber", "Alder", ""),
            "lift",
            Invented.outcome("A1/across", 1, 3, 8),
            java.time.Instant.EPOCH,
            List.of("tilt-1", "tilt-2"));
    Comparison comparison = comparer.compare(List.of(both), PLUMB, Factor.METER, 1);
    assertEquals(1, comparison.severalLevels());
    assertEquals(List.of(), comparison.groups());
  }

  @Test
  void moreChecksWidenTheIntervals() {
    List<DatedOutcome> outcomes = jobsOf("Amber", "t", FOUR_GROUPS[0]);
    outcomes.addAll(jobsOf("Blue", "t", FOUR_GROUPS[1]));
    Comparison one = comparer.compare(outcomes, PLUMB, Factor.CREW, 1);
    Comparison ten = comparer.compare(outcomes, PLUMB, Factor.CREW, 10);
    assertEquals(0.995, ten.jointConfidence(), 1e-12);
    assertTrue(ten.differences().get(0).halfWidth() > one.differences().get(0).halfWidth());
    assertThrows(
        IllegalArgumentException.class, () -> comparer.compare(outcomes, PLUMB, Factor.CREW, 0));
  }

  /**
   * Four crews that do not differ but are unequally spread, 600 times: a difference is claimed in
   * at most 5 % (and 3 standard errors of that many runs).
   */
  @Test
  void equalCrewsAreSeldomSaidToDiffer() {
    NormalDraws draws = new NormalDraws(77);
    int claimed = 0;
    for (int run = 0; run < 600; run++) {
      List<DatedOutcome> outcomes = new ArrayList<>();
      for (int crew = 0; crew < 4; crew++) {
        double spread = 2 + 3 * crew;
        outcomes.addAll(
            jobsOf(
                "Crew" + crew,
                "t",
                DoubleStream.generate(() -> draws.next(spread)).limit(4 + 2 * crew).toArray()));
      }
      boolean shown = byCrew(outcomes).differences().stream().anyMatch(Difference::isShown);
      claimed += shown ? 1 : 0;
    }
    assertTrue(claimed <= 600 * (0.05 + 3 * Math.sqrt(0.05 * 0.95 / 600)), claimed + " of 600");
  }
}
