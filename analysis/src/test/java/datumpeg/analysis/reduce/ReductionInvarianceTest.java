package datumpeg.analysis.reduce;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.analysis.quantity.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
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
 * entered in, the height of the level's plane, which side of the building is called A. And one more
 * reading that agrees never makes anything less certain.
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

  /** The checks whose number turns its sign when A and B change places. */
  private static final Set<String> TURNING = Set.of("slab-diagonals", "portal-plumb");

  @Property(tries = 6, seed = "2026")
  void whichSideIsCalledADoesNotMatter(@ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
    List<Reading> readings =
        survey(seed).stream()
            .filter(r -> r.target().points().stream().noneMatch(p -> p.feature().equals("opening")))
            .toList();
    Findings expected = reduced(readings);
    Findings mirrored = reduced(readings.stream().map(ReductionInvarianceTest::mirrored).toList());
    Set<String> compared = new TreeSet<>();
    for (StageFindings stage : expected.stages()) {
      for (Outcome outcome : stage.outcomes()) {
        if (TrueValues.of(outcome.check()).isPresent()) {
          compared.add(outcome.check());
          assertMirrored(outcome, mirrored.stage(stage.stage()).orElseThrow());
        }
      }
    }
    assertTrue(compared.size() >= 14, compared.toString());
  }

  private static void assertMirrored(Outcome outcome, StageFindings mirrored) {
    String target = mirroredText(outcome.target());
    Outcome other =
        mirrored.outcomes().stream()
            .filter(o -> o.check().equals(outcome.check()) && sameTarget(o.target(), target))
            .findFirst()
            .orElseThrow(() -> new AssertionError(outcome.check() + " " + target));
    boolean turns =
        TURNING.contains(outcome.check())
            || (outcome.check().equals("column-plumb") && target.endsWith("/across"));
    String what = outcome.check() + " " + outcome.target();
    assertEquals(
        turns ? -outcome.deviation() : outcome.deviation(), other.deviation(), SAME_METRES, what);
    assertEquals(outcome.expandedUncertainty(), other.expandedUncertainty(), SAME_METRES, what);
    assertEquals(outcome.probability().orElse(-1), other.probability().orElse(-1), 1e-6, what);
  }

  /** {@code B1-A1} is {@code A1-B1}: results name pairs in grid order. */
  private static boolean sameTarget(String one, String other) {
    return one.equals(other) || sorted(one).equals(sorted(other));
  }

  private static List<String> sorted(String pair) {
    return Arrays.stream(pair.split("-")).sorted().toList();
  }

  private static String mirroredText(String target) {
    PointName place = PointName.parse(target).orElse(new PointName("slab", "", ""));
    if (place.placeInMetres().isPresent()) {
      return mirrored(place).text();
    }
    return target.replace('A', '?').replace('B', 'A').replace('?', 'B');
  }

  private static Target mirrored(Target target) {
    List<PointName> points =
        target.points().stream().map(ReductionInvarianceTest::mirrored).toList();
    return target.quantity() == MeasuredQuantity.DISTANCE
        ? Target.distance(points.get(0), points.get(1))
        : new Target(target.quantity(), points, target.axis(), target.question());
  }

  private static PointName mirrored(PointName point) {
    if (point.placeInMetres().isPresent()) {
      PlanPoint place = point.placeInMetres().get();
      double y = JOB.setOut().building().spanMetres() - place.yMetres();
      String across = y == Math.rint(y) ? Long.toString((long) y) : Double.toString(y);
      String along = Long.toString((long) place.xMetres());
      return new PointName(point.feature(), "@(" + along + ";" + across + ")", point.part());
    }
    String place =
        switch (point.place().charAt(0)) {
          case 'A' -> "B" + point.place().substring(1);
          case 'B' -> "A" + point.place().substring(1);
          default -> point.place();
        };
    return new PointName(point.feature(), place, point.part());
  }

  /**
   * Seen in a mirror, a meter that leans across reads the same on its other face, its zero error
   * included; an offset across from a plumb line turns its sign.
   */
  private static Reading mirrored(Reading reading) {
    Target target = reading.target();
    boolean across = target.axis().filter(axis -> axis == Axis.ACROSS).isPresent();
    boolean tilt = target.quantity() == MeasuredQuantity.TILT;
    double value = across && !tilt ? -reading.valueSi() : reading.valueSi();
    int face = across && tilt ? 3 - reading.face() : reading.face();
    return copy(reading, reading.id(), mirrored(target), value, face);
  }

  /**
   * Every reading of the survey stage once more, with the same value and errors: the uncertainty of
   * each outcome stays or falls.
   */
  @Test
  void oneMoreReadingThatAgreesNeverRaisesAnUncertainty() {
    List<Reading> readings = survey(9).stream().filter(r -> r.stage().equals("survey")).toList();
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
    return copy(reading, id, target, valueSi, reading.face());
  }

  private static Reading copy(Reading reading, String id, Target target, double valueSi, int face) {
    return new Reading(
        id,
        reading.stage(),
        target,
        valueSi,
        face,
        reading.meter(),
        reading.session(),
        reading.setup(),
        reading.upMetres(),
        reading.round(),
        reading.at(),
        reading.operator(),
        reading.note());
  }
}
