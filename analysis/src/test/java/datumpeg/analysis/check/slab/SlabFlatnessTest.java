package datumpeg.analysis.check.slab;

import static datumpeg.analysis.measuring.MeasuredQuantity.HEIGHT;
import static datumpeg.analysis.measuring.MeasuredQuantity.OFFSET;
import static datumpeg.analysis.measuring.MeasuredQuantity.STAFF;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.LimitRule;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.conform.Tolerance;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.detail.Details;
import datumpeg.analysis.detail.FlatnessPlan;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.StageFindings;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class SlabFlatnessTest {
  /** Heights of an invented profile of 3.6 m, mm: one hump of 6 mm at 1.5 m on an even fall. */
  private static final double[] HUMP = {0, 1, 2, 3, 5, 11, 7, 7, 8, 9, 10, 11, 12};

  private static FlatnessPlan plan(OptionalDouble leastFf) {
    return new FlatnessPlan(
        2,
        OptionalDouble.of(6),
        0.3,
        Map.of("L1", new FlatnessPlan.Line(2, 2, 5.6, 2)),
        leastFf,
        OptionalDouble.empty());
  }

  private static InventedJob job(OptionalDouble leastFf) {
    InventedJob job = new InventedJob().meter("level", HEIGHT, 0.0001, 0.002);
    job.meter("rule", OFFSET, 0.0003, 0.0002).limit("slab-flatness", 0.005);
    job.details = Details.NONE.withFlatness(plan(leastFf));
    return job;
  }

  private static InventedJob profile(OptionalDouble leastFf, double tiltPerStep) {
    InventedJob job = job(leastFf);
    for (int i = 0; i < HUMP.length; i++) {
      String point = "profile.L1@(%s)".formatted(java.math.BigDecimal.valueOf(3L * i, 1));
      job.read("arrival", HEIGHT, point, 1 + HUMP[i] / 1000 + i * tiltPerStep);
    }
    return job;
  }

  private static Outcome outcome(InventedJob job, String target) {
    return job.reduced("arrival").outcome("slab-flatness", target).orElseThrow();
  }

  /** Bends 0 0 1 4 −10 4 1 0 0 0 0: mean 0, s = √(134/10) mm; 0.1158 / (3 s) = 10.5447. */
  @Test
  void bendsOfAProfileGiveFf() {
    Outcome ff = outcome(profile(OptionalDouble.empty(), 0), "FF");
    assertEquals(0.1158 / (3 * Math.sqrt(13.4) / 1000), ff.measured(), 1e-9);
    assertEquals(OutcomeUnit.F_NUMBER, ff.unit());
    assertTrue(ff.verdict().isEmpty());
    assertTrue(ff.aside().contains("L1 10.5"), ff.aside());
  }

  /** Rises over ten steps: 10, 10, 10 mm; their mean alone counts: 0.3175 / 0.010. */
  @Test
  void risesOverTenStepsGiveFl() {
    assertEquals(31.75, outcome(profile(OptionalDouble.empty(), 0), "FL").measured(), 1e-9);
  }

  @Test
  void aTiltedLevelPlaneLeavesFfAlone() {
    double level = outcome(profile(OptionalDouble.empty(), 0), "FF").measured();
    assertEquals(level, outcome(profile(OptionalDouble.empty(), 0.003), "FF").measured(), 1e-9);
  }

  /** A tilt of 3 mm a step lifts every rise over ten steps by 30 mm: 0.3175 / (0.010 + 0.030). */
  @Test
  void aTiltedLevelPlaneAddsTenStepsOfItToEachRise() {
    assertEquals(
        0.3175 / 0.040, outcome(profile(OptionalDouble.empty(), 0.003), "FL").measured(), 1e-9);
  }

  @Test
  void aFloorSurelyRougherThanAskedIsForWhoLaidIt() {
    InventedJob job = profile(OptionalDouble.of(60), 0);
    Outcome ff = outcome(job, "FF");
    assertTrue(ff.is(Verdict.NONCONFORMING), ff.toString());
    assertTrue(ff.remedy().contains("who laid the slab"), ff.remedy());
    String cause = job.reduced("arrival").causes().get(0).sentence();
    assertTrue(cause.contains("flatness number FF is 10.5"), cause);
    assertTrue(cause.contains("at least 60.0 is asked for"), cause);
  }

  @Test
  void aShortSampleDecidesLittleAndSaysWhatWould() {
    Outcome ff = outcome(profile(OptionalDouble.of(11), 0), "FF");
    assertTrue(ff.is(Verdict.UNDECIDED), ff.toString());
    assertTrue(ff.remedy().startsWith("Level more lines"), ff.remedy());
  }

  @Test
  void theGreatestGapUnderTheStraightedgeIsDecided() {
    InventedJob job = job(OptionalDouble.empty());
    job.read("arrival", OFFSET, "slab.@(3;1.5)", 0.002)
        .read("arrival", OFFSET, "slab.@(9;1.5)", 0.009)
        .read("arrival", OFFSET, "slab.@(15;1.5)", -0.001);
    StageFindings stage = job.reduced("arrival");
    Outcome gap = stage.outcome("slab-flatness", "straightedge").orElseThrow();
    assertEquals(0.009, gap.measured(), 1e-12);
    assertTrue(gap.is(Verdict.NONCONFORMING), gap.toString());
    assertTrue(
        gap.aside()
            .contains(
                "2.00 m, worst of 3: 9.0 mm on the slab 9 m from end 1 and 1.5 m from side A,"),
        gap.aside());
    assertTrue(gap.remedy().startsWith("Grind the high or fill the low"), gap.remedy());
    // 0.95 = (2Φ(k) − 1)³, k = 2.3877 (Šidák, reckoned in Python)
    assertEquals(2.3877, gap.coverage(), 5e-5);
  }

  /** A limit of size / 250 under a straightedge of 2 m: 8 mm. */
  @Test
  void theLimitWorksOnTheLengthOfTheStraightedge() {
    InventedJob job = job(OptionalDouble.empty());
    job.tolerances.put(
        "slab-flatness", new Tolerance(new LimitRule.Ratio(250, OptionalDouble.empty()), "x"));
    job.read("arrival", OFFSET, "slab.@(3;1.5)", 0.002);
    assertEquals(
        0.008, outcome(job, "straightedge").limits().orElseThrow().upper().orElseThrow(), 1e-12);
  }

  @Test
  void aStaffReadsAProfileToo() {
    InventedJob job = new InventedJob().meter("level", STAFF, 0.0001, 0);
    job.details = Details.NONE.withFlatness(plan(OptionalDouble.empty()));
    for (int i = 0; i < 4; i++) {
      job.read("arrival", STAFF, "profile.L1@(%s)".formatted(i * 3 / 10.0), i == 2 ? 1.5 : 1.503);
    }
    StageFindings stage = job.reduced("arrival");
    assertTrue(stage.outcome("slab-flatness", "FF").isEmpty());
    assertTrue(
        stage.notes().stream()
            .anyMatch(
                note ->
                    note.kind() == Note.Kind.UNDETERMINED
                        && note.text().startsWith("No FF of L1")));
  }

  @Test
  void theListAsksForTheProfileAndThePlacesOfTheStraightedge() {
    List<String> targets =
        MeasuringList.of(
                job(OptionalDouble.empty()).build().setOut(),
                Stage.standard("arrival").orElseThrow())
            .targets()
            .stream()
            .map(Target::text)
            .toList();
    assertTrue(targets.contains("profile.L1@(3.6)"), targets.toString());
    assertTrue(targets.contains("slab.@(9;2.25)"), targets.toString());
  }
}
