package datumpeg.bridge.samples;

import static datumpeg.analysis.conform.Verdict.NONCONFORMING;
import static datumpeg.analysis.conform.Verdict.UNDECIDED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.Reduction;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.simulate.SimulatedColumn;
import datumpeg.bridge.jobfile.JobFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** The truth of the sample jobs holds what the README says is planted, and nothing else. */
class PlantedFaultsTest {
  private static final int OTHER_SEEDS = 40;
  private static final double PLUMB_LIMIT_METRES = 3.6 / 500;
  private final Larkrise larkrise = new Larkrise(job("larkrise-01"));

  private static Job job(String id) {
    Path file = Path.of(System.getProperty("datumpeg.root"), "sample-readings", id, "job.toml");
    try {
      return JobFile.read(Files.readString(file), file.toString());
    } catch (IOException e) {
      throw new AssertionError("the sample job " + id + " is not there", e);
    }
  }

  private static double distance(Map<Target, Double> values, String target) {
    return Objects.requireNonNull(
        values.get(Target.parse(MeasuredQuantity.DISTANCE, target)), target);
  }

  /** A second route to the corner's angle: the law of cosines on true sides and diagonal. */
  @Test
  void theSlabIsOutOfSquareThoughItsDiagonalsAgree() {
    Map<Target, Double> values = larkrise.arrival().trueValues();
    double side = distance(values, "slab.A1-slab.A4");
    double end = distance(values, "slab.A1-slab.B1");
    double across = distance(values, "slab.A4-slab.B1");
    double along = distance(values, "slab.A1-slab.B4");
    double cosine = (side * side + end * end - across * across) / (2 * side * end);
    double offSquare = 9 * StrictMath.tan(StrictMath.acos(cosine) - StrictMath.PI / 2);
    assertEquals(-0.014, offSquare, 0.001);
    assertTrue(Math.abs(along - across) < 0.002, "diagonals differ by " + (along - across));
  }

  @Test
  void onlyColumnA3IsOutOfPlumbAtTheLiftAndOnlyB2IsNearItsLimit() {
    Map<String, Double> leans = leans(larkrise.lift());
    assertEquals(0.021, leans.remove("A3/across"));
    assertEquals(0.007, leans.remove("B2/along"));
    leans.forEach((target, lean) -> assertTrue(lean < PLUMB_LIMIT_METRES / 2, target));
  }

  @Test
  void everyColumnIsPlumbAtTheTightening() {
    leans(larkrise.tightening())
        .forEach((target, lean) -> assertTrue(lean < PLUMB_LIMIT_METRES / 2, target));
  }

  private static Map<String, Double> leans(Visit visit) {
    Map<String, Double> leans = new TreeMap<>();
    for (Map.Entry<GridMark, SimulatedColumn> column : visit.columns().entrySet()) {
      for (Axis axis : Axis.values()) {
        leans.put(
            column.getKey().text() + "/" + axis.text(),
            Math.abs(column.getValue().leanMetres(axis)));
      }
    }
    return leans;
  }

  @Test
  void onlyBayA2ToA3IsLong() {
    Map<PointName, Position> shifts = larkrise.lift().shifts();
    for (String side : List.of("A", "B")) {
      for (int number = 1; number < 4; number++) {
        double change = x(shifts, side + (number + 1)) - x(shifts, side + number);
        boolean planted = side.equals("A") && number == 2;
        assertEquals(planted ? 0.018 : 0, change, planted ? 1e-12 : 0.0061, side + number);
      }
    }
  }

  private static double x(Map<PointName, Position> shifts, String mark) {
    PointName base = PointName.parse("base." + mark).orElseThrow();
    return shifts.getOrDefault(base, new Position(0, 0, 0)).xMetres();
  }

  @Test
  void oneReadingOfAllIsASlip() {
    assertEquals(1, larkrise.lift().slips().size());
    assertEquals(List.of(), larkrise.arrival().slips());
    assertEquals(List.of(), larkrise.tightening().slips());
    Reading slipped =
        larkrise.lift().readings().stream()
            .filter(reading -> reading.target().text().equals("base.B1/low-base.B3/low"))
            .findFirst()
            .orElseThrow();
    assertEquals(11.968 + 0.018, slipped.valueSi(), 0.003);
  }

  @Test
  void quarrybendHasOneLowCornerAndOneLeaningColumn() {
    Quarrybend quarrybend = new Quarrybend(job("quarrybend-02"));
    quarrybend
        .slabVisit()
        .shifts()
        .forEach(
            (point, shift) ->
                assertTrue(
                    point.text().equals("slab.B3")
                        ? shift.zMetres() == -0.014
                        : Math.abs(shift.zMetres()) < 0.004,
                    point.text()));
    Map<String, Double> leans = leans(quarrybend.plumbLineVisit());
    assertEquals(0.019, leans.remove("B2/along"));
    leans.forEach((target, lean) -> assertTrue(lean < 0.002, target));
  }

  /**
   * The faults are clear, not lucky: whatever the errors drawn, each comes out, none comes out
   * conforming, and nothing else is called nonconforming.
   */
  @Test
  void thePlantedFaultsAreFoundWithOtherErrorsToo() {
    int undecided = 0;
    for (long seed = 1; seed <= OTHER_SEEDS; seed++) {
      Findings findings = reduced(new Larkrise(job("larkrise-01"), seed));
      assertEquals(
          List.of("slab-square A1", "slab-square A4", "slab-square B1", "slab-square B4"),
          nonconforming(findings, "arrival"),
          "seed " + seed);
      StageFindings lift = findings.stage("lift").orElseThrow();
      List<String> out = nonconforming(findings, "lift");
      assertTrue(out.contains("column-plumb A3/across"), "seed " + seed + ": " + out);
      assertTrue(out.contains("frame-spacing A2-A3/base"), "seed " + seed + ": " + out);
      undecided += lift.outcome("column-plumb", "B2/along").orElseThrow().is(UNDECIDED) ? 1 : 0;
      assertTrue(
          lift.notes().stream().anyMatch(note -> note.kind() == Note.Kind.SLIP_SUSPECTED),
          "seed " + seed);
    }
    // the truth stands 0.2 mm inside the limit, u = 0.9 mm: decided when off by more than 1.6 u
    assertTrue(undecided >= 0.75 * OTHER_SEEDS, undecided + " undecided");
  }

  private static List<String> nonconforming(Findings findings, String stage) {
    return findings.stage(stage).orElseThrow().outcomes().stream()
        .filter(outcome -> outcome.is(NONCONFORMING))
        .map(outcome -> outcome.check() + " " + outcome.target())
        .sorted()
        .toList();
  }

  private static Findings reduced(Larkrise larkrise) {
    List<Reading> readings = new ArrayList<>(larkrise.arrival().readings());
    readings.addAll(larkrise.lift().readings());
    return new Reduction(job("larkrise-01"), "").reduce(readings, List.of());
  }
}
