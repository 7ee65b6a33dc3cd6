package datumpeg.analysis.reduce;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.Rounds;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.analysis.quantity.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

/**
 * What must not change the findings: the order of the readings, their ids, the unit they were
 * entered in, the height of the level's plane, which side of the building is called A and which end
 * is the first. And one more reading that agrees never makes anything less certain.
 */
class ReductionInvarianceTest {
  /** Numbers whose order of summation changed agree to this: 1 nm of lengths around 10 m. */
  private static final double SAME_METRES = 1e-9;

  private static final Job JOB = SimulatedSurvey.job();

  private static Findings reduced(List<Reading> readings) {
    return new Reduction(JOB, "digest").reduce(readings, List.of());
  }

  private static List<Reading> survey(long seed) {
    return SimulatedSurvey.draw(JOB, seed).readings();
  }

  @Property(tries = 10, seed = "2026")
  void theOrderOfTheReadingsDoesNotMatter(@ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
    List<Reading> readings = new ArrayList<>(survey(seed));
    Findings expected = reduced(readings);
    Collections.shuffle(readings, new Random(seed));
    assertEquals(expected, reduced(readings));
  }

  /** Readings come a few at a time, of one stage or another; what stays is taken over. */
  @Property(tries = 4, seed = "2026")
  void readingsThatComeLaterAreReducedAsIfAllHadCome(
      @ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
    List<Reading> readings = new ArrayList<>(survey(seed));
    Collections.shuffle(readings, new Random(seed));
    Reduction reduction = new Reduction(JOB, "digest");
    List<MovedThing> pushed = List.of(MovedThing.parse("column.A2"));
    List<Reduced> known = new ArrayList<>();
    int takenOver = 0;
    for (int n = readings.size() - 8; n <= readings.size(); n++) {
      Rounds now = new Rounds(n < readings.size() - 4 ? List.of() : pushed, readings.subList(0, n));
      Findings found = reduction.reduce(now, known);
      assertEquals(reduction.reduce(now.readings(), now.moved()), found);
      takenOver += known.stream().mapToInt(one -> same(one.findings(), found)).max().orElse(0);
      known.add(new Reduced(now, found));
    }
    assertTrue(takenOver > 4 * stages(readings), takenOver + " taken over");
  }

  private static int stages(List<Reading> readings) {
    return reduced(readings).stages().size();
  }

  /** How many stages of one are the very objects of the other. */
  private static int same(Findings one, Findings other) {
    Set<StageFindings> known = Collections.newSetFromMap(new IdentityHashMap<>());
    known.addAll(one.stages());
    return (int) other.stages().stream().filter(known::contains).count();
  }

  @Property(tries = 6, seed = "2026")
  void theIdsOfTheReadingsDoNotMatter(@ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
    List<Reading> readings = survey(seed);
    List<Integer> labels = new ArrayList<>();
    for (int i = 0; i < readings.size(); i++) {
      labels.add(i);
    }
    Collections.shuffle(labels, new Random(seed));
    Map<String, String> newIds = new LinkedHashMap<>();
    for (int i = 0; i < readings.size(); i++) {
      newIds.put(readings.get(i).id(), "label-" + labels.get(i));
    }
    Findings relabelled =
        reduced(
            readings.stream()
                .map(r -> copy(r, newIds.getOrDefault(r.id(), ""), r.target(), r.valueSi()))
                .toList());
    Findings expected = reduced(readings);
    assertSame(expected, relabelled);
    for (StageFindings stage : expected.stages()) {
      for (Outcome outcome : stage.outcomes()) {
        Set<String> ids =
            outcome.readingIds().stream()
                .map(id -> newIds.getOrDefault(id, ""))
                .collect(Collectors.toSet());
        assertEquals(ids, Set.copyOf(found(relabelled, stage, outcome).readingIds()));
      }
    }
  }

  /**
   * Metres, millimetres and exact decimals of feet; degrees and millimetres a metre of the tilt.
   */
  @Test
  void theUnitOfTheEntryDoesNotMatter() {
    List<Reading> readings = survey(7);
    Findings expected = reduced(readings);
    for (List<Unit> units :
        List.of(
            List.of(unit("m"), unit("rad")),
            List.of(unit("mm"), unit("deg")),
            List.of(unit("cm"), unit("rad")),
            List.of(unit("ft"), unit("deg")),
            List.of(unit("in"), unit("rad")))) {
      assertSame(
          expected,
          reduced(
              readings.stream().map(r -> copy(r, r.id(), r.target(), entered(r, units))).toList()));
    }
  }

  private static Unit unit(String symbol) {
    return Unit.ofSymbol(symbol).orElseThrow();
  }

  private static double entered(Reading reading, List<Unit> units) {
    Unit unit = reading.target().quantity() == MeasuredQuantity.TILT ? units.get(1) : units.get(0);
    String text =
        new BigDecimal(unit.fromSi(reading.valueSi()))
            .setScale(12, RoundingMode.HALF_EVEN)
            .toPlainString();
    return Quantity.parse(text, unit.symbol()).siValue();
  }

  @Test
  void theHeightOfTheLevelsPlaneDoesNotMatter() {
    List<Reading> readings = survey(8);
    assertSame(
        reduced(readings),
        reduced(
            readings.stream()
                .map(
                    r ->
                        r.target().quantity() == MeasuredQuantity.HEIGHT
                            ? copy(r, r.id(), r.target(), r.valueSi() - 0.75)
                            : r)
                .toList()));
  }

  @Property(tries = 6, seed = "2026")
  void whichSideIsCalledADoesNotMatter(@ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
    assertMirrored(Mirror.SIDES, seed);
  }

  @Property(tries = 6, seed = "2026")
  void whichEndIsTheFirstDoesNotMatter(@ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
    assertMirrored(Mirror.ENDS, seed);
  }

  /** What has no mirror image in the plan is left out: openings, which stand in one wall only. */
  private static void assertMirrored(Mirror mirror, long seed) {
    List<Reading> readings =
        survey(seed).stream()
            .filter(r -> r.target().points().stream().allMatch(mirror::has))
            .toList();
    Findings expected = reduced(readings);
    Findings mirrored = reduced(readings.stream().map(mirror::of).toList());
    Set<String> compared = new TreeSet<>();
    for (StageFindings stage : expected.stages()) {
      for (Outcome outcome : stage.outcomes()) {
        if (TrueValues.of(outcome.check()).isPresent()) {
          compared.add(outcome.check());
          assertMirrored(mirror, outcome, mirrored.stage(stage.stage()).orElseThrow());
        }
      }
    }
    assertTrue(compared.size() >= 14, compared.toString());
  }

  private static void assertMirrored(Mirror mirror, Outcome outcome, StageFindings mirrored) {
    String what = outcome.check() + " " + outcome.target();
    Outcome other =
        mirrored.outcomes().stream()
            .filter(o -> o.check().equals(outcome.check()))
            .filter(o -> mirror.isImage(outcome.target(), o.target()))
            .findFirst()
            .orElseThrow(() -> new AssertionError("no mirror image of " + what));
    boolean turns = mirror.turns(outcome.check(), outcome.target());
    assertEquals(
        turns ? -outcome.deviation() : outcome.deviation(), other.deviation(), SAME_METRES, what);
    assertEquals(outcome.expandedUncertainty(), other.expandedUncertainty(), SAME_METRES, what);
    assertEquals(outcome.probability().orElse(-1), other.probability().orElse(-1), 1e-6, what);
  }

  /**
   * Every reading of a survey without errors once more, so that all agree before and after: the
   * uncertainty of each outcome stays or falls. (Readings of which one more makes a network fail
   * its test stand as observed, and are less certain for it.)
   */
  @Test
  void oneMoreReadingThatAgreesNeverRaisesAnUncertainty() {
    List<Reading> readings =
        SimulatedSurvey.withoutErrors(JOB, 9).readings().stream()
            .filter(r -> r.stage().equals("survey"))
            .toList();
    Map<String, Double> before = uncertainties(reduced(readings));
    for (Reading reading : readings) {
      List<Reading> more = new ArrayList<>(readings);
      more.add(copy(reading, "once-more", reading.target(), reading.valueSi()));
      Map<String, Double> after = uncertainties(reduced(more));
      assertEquals(before.keySet(), after.keySet());
      before.forEach(
          (name, uncertainty) ->
              assertTrue(
                  after.getOrDefault(name, Double.POSITIVE_INFINITY) <= uncertainty * (1 + 1e-9),
                  () -> name + " after one more " + reading.target().text()));
    }
  }

  private static Map<String, Double> uncertainties(Findings findings) {
    Map<String, Double> byName = new TreeMap<>();
    findings
        .stages()
        .forEach(
            stage ->
                stage
                    .outcomes()
                    .forEach(
                        o -> byName.put(o.check() + " " + o.target(), o.expandedUncertainty())));
    return byName;
  }

  private static void assertSame(Findings expected, Findings actual) {
    assertEquals(
        expected.stages().stream().map(StageFindings::stage).toList(),
        actual.stages().stream().map(StageFindings::stage).toList());
    for (StageFindings stage : expected.stages()) {
      for (Outcome outcome : stage.outcomes()) {
        Outcome other = found(actual, stage, outcome);
        String what = stage.stage() + " " + outcome.check() + " " + outcome.target();
        assertEquals(outcome.deviation(), other.deviation(), SAME_METRES, what);
        assertEquals(outcome.measured(), other.measured(), SAME_METRES, what);
        assertEquals(outcome.expandedUncertainty(), other.expandedUncertainty(), SAME_METRES, what);
        assertEquals(outcome.verdict(), other.verdict(), what);
        assertEquals(outcome.remedy(), other.remedy(), what);
      }
      assertEquals(
          stage.causes().size(), actual.stage(stage.stage()).orElseThrow().causes().size());
    }
  }

  private static Outcome found(Findings in, StageFindings stage, Outcome outcome) {
    return in.stage(stage.stage())
        .orElseThrow()
        .outcome(outcome.check(), outcome.target())
        .orElseThrow();
  }

  private static Reading copy(Reading reading, String id, Target target, double valueSi) {
    return Mirror.copy(reading, id, target, valueSi, reading.face());
  }
}
