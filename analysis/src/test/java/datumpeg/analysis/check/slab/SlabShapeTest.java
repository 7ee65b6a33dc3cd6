package datumpeg.analysis.check.slab;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.AdjustedReading;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.PointEstimate;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.StageFindings;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class SlabShapeTest {

  /**
   * A braced quadrilateral of 12 m by 9 m, each distance known to 1.5 mm. Expected values: adjusted
   * with numpy (Gauss-Newton) and R (optim), which agree to 1e-6 m; corner angles A 89.910111°, B
   * 90.058096°, C 89.970530°, D 90.061263°.
   */
  private static InventedJob bracedQuadrilateral() {
    InventedJob job = new InventedJob().meter("laser", DISTANCE, 0.0015, 0);
    job.baysMetres = List.of(6.0, 6.0);
    return job.read("arrival", DISTANCE, "slab.A1-slab.A3", 12.003)
        .read("arrival", DISTANCE, "slab.A3-slab.B3", 8.998)
        .read("arrival", DISTANCE, "slab.B3-slab.B1", 11.998)
        .read("arrival", DISTANCE, "slab.B1-slab.A1", 9.004)
        .read("arrival", DISTANCE, "slab.A1-slab.B3", 15.006)
        .read("arrival", DISTANCE, "slab.A3-slab.B1", 14.991);
  }

  @Test
  void adjustsTheWorkedQuadrilateral() {
    StageFindings found = bracedQuadrilateral().reduced("arrival");
    assertEquals(12.002001, found.outcome("slab-size", "A1-A3").orElseThrow().measured(), 1e-6);
    assertEquals(8.997250, found.outcome("slab-size", "A3-B3").orElseThrow().measured(), 1e-6);
    assertEquals(11.997001, found.outcome("slab-size", "B1-B3").orElseThrow().measured(), 1e-6);
    assertEquals(9.003251, found.outcome("slab-size", "A1-B1").orElseThrow().measured(), 1e-6);
    assertEquals(
        2 * 0.001375,
        found.outcome("slab-size", "A1-A3").orElseThrow().expandedUncertainty(),
        2e-6);
    PointEstimate b3 = Objects.requireNonNull(found.points().get("slab.B3"));
    assertEquals(12.01112, b3.xMetres(), 1e-5);
    assertEquals(8.99725, b3.yMetres(), 1e-5);
  }

  /**
   * Residuals −0.9988, −0.7496, −0.9992, −0.7491, +1.2494, +1.2482 mm and χ² = 2.77250: as above.
   */
  @Test
  void observedAndAdjustedAreKeptApart() {
    Network slab = bracedQuadrilateral().reduced("arrival").networks().get(0);
    assertEquals(1, slab.degreesOfFreedom());
    assertEquals(2.77250, slab.varianceFactor().orElseThrow(), 1e-5);
    double[] observed = {12.003, 8.998, 11.998, 9.004, 15.006, 14.991};
    double[] residuals = {-0.9988e-3, -0.7496e-3, -0.9992e-3, -0.7491e-3, 1.2494e-3, 1.2482e-3};
    double[] redundancies = {0.160, 0.090, 0.160, 0.090, 0.250, 0.250};
    for (int i = 0; i < 6; i++) {
      AdjustedReading reading = slab.readings().get(i);
      assertEquals(observed[i], reading.observedMetres());
      assertEquals(residuals[i], reading.residualMetres(), 5e-8);
      assertEquals(observed[i] + residuals[i], reading.adjustedMetres(), 1e-7);
      assertEquals(redundancies[i], reading.redundancy(), 5e-4);
    }
    assertEquals(
        0.00840, slab.readings().get(4).smallestDetectableSlipMetres().orElseThrow(), 1e-5);
  }

  @Test
  void squarenessIsTheShorterSideTimesTheTangentOfTheAngleTooMuch() {
    StageFindings found = bracedQuadrilateral().reduced("arrival");
    double[] degrees = {89.910111, 90.058096, 89.970530, 90.061263};
    List<String> corners = List.of("A1", "A3", "B3", "B1");
    for (int i = 0; i < 4; i++) {
      double expected = 9 * StrictMath.tan(StrictMath.toRadians(degrees[i] - 90));
      Outcome corner = found.outcome("slab-square", corners.get(i)).orElseThrow();
      assertEquals(expected, corner.deviation(), 2e-7);
    }
  }

  @Test
  void diagonalsArePrintedWithoutSignAndDecidedWithIt() {
    InventedJob job = bracedQuadrilateral().limit("slab-diagonals", 0.010);
    Outcome diagonals = job.reduced("arrival").outcome("slab-diagonals", "slab").orElseThrow();
    assertEquals(0.015, diagonals.measured(), 1e-12);
    assertEquals(2 * 0.0015 * Math.sqrt(2), diagonals.expandedUncertainty(), 1e-12);
    assertTrue(diagonals.is(Verdict.NONCONFORMING));
  }

  @Test
  void anErrorTheSessionSharesCancelsInTheDifferenceOfTheDiagonals() {
    InventedJob job = bracedQuadrilateral().meter("laser", DISTANCE, 0.0015, 0.005);
    Outcome diagonals = job.reduced("arrival").outcome("slab-diagonals", "slab").orElseThrow();
    assertEquals(2 * 0.0015 * Math.sqrt(2), diagonals.expandedUncertainty(), 1e-9);
  }

  /**
   * An isosceles trapezium, sides 12.10, 9, 12.00, 9 m: its diagonals are equal (Ptolemy: d² =
   * 12.10 · 12.00 + 9²), its corners are not square: they lean by 0.05 m over its height of √(9² −
   * 0.05²).
   */
  @Test
  void equalDiagonalsDoNotProveARectangle() {
    double diagonal = Math.sqrt(12.10 * 12.00 + 81);
    InventedJob job =
        new InventedJob()
            .meter("laser", DISTANCE, 0.0005, 0)
            .limit("slab-diagonals", 0.010)
            .limit("slab-square", 0.008);
    job.baysMetres = List.of(6.0, 6.0);
    StageFindings found =
        job.read("arrival", DISTANCE, "slab.A1-slab.A3", 12.10)
            .read("arrival", DISTANCE, "slab.A3-slab.B3", 9)
            .read("arrival", DISTANCE, "slab.B3-slab.B1", 12.00)
            .read("arrival", DISTANCE, "slab.B1-slab.A1", 9)
            .read("arrival", DISTANCE, "slab.A1-slab.B3", diagonal)
            .read("arrival", DISTANCE, "slab.A3-slab.B1", diagonal)
            .reduced("arrival");
    assertTrue(found.outcome("slab-diagonals", "slab").orElseThrow().is(Verdict.CONFORMING));
    double lean = 0.05 / Math.sqrt(81 - 0.05 * 0.05);
    assertEquals(-9 * lean, found.outcome("slab-square", "A1").orElseThrow().deviation(), 1e-6);
    assertEquals(9 * lean, found.outcome("slab-square", "B1").orElseThrow().deviation(), 1e-6);
    assertTrue(found.outcome("slab-square", "A1").orElseThrow().is(Verdict.NONCONFORMING));
    assertEquals(1, found.causes().size());
    assertTrue(found.causes().get(0).sentence().contains("though its diagonals agree"));
    assertEquals(Answer.Kind.STOP, found.answer().kind());
  }

  @Test
  void aNetworkThatDoesNotCloseIsSaidAndNothingIsDropped() {
    InventedJob job = new InventedJob().meter("laser", DISTANCE, 0.0005, 0);
    job.baysMetres = List.of(6.0, 6.0);
    StageFindings found =
        job.read("arrival", DISTANCE, "slab.A1-slab.A3", 12)
            .read("arrival", DISTANCE, "slab.A3-slab.B3", 9)
            .read("arrival", DISTANCE, "slab.B3-slab.B1", 12)
            .read("arrival", DISTANCE, "slab.B1-slab.A1", 9)
            .read("arrival", DISTANCE, "slab.A1-slab.B3", 15.1)
            .read("arrival", DISTANCE, "slab.A3-slab.B1", 15)
            .reduced("arrival");
    Note slip = found.notes().get(0);
    assertEquals(Note.Kind.SLIP_SUSPECTED, slip.kind());
    assertTrue(
        slip.text().contains("There is a slip in one of them, but it cannot be told in which."),
        slip.text());
    assertTrue(
        slip.text().indexOf("Read the distance from slab corner A1 to slab corner A3 once more")
            < slip.text().indexOf("What would explain it, best first: 1. A mark of 100 mm added"),
        "what to do comes before what may have happened: " + slip.text());
    assertEquals(6, found.readingCount());
  }

  @Test
  void sidesAloneAreReportedAsObservedAndTheMissingDistanceIsNamed() {
    InventedJob job = new InventedJob().meter("laser", DISTANCE, 0.001, 0);
    job.baysMetres = List.of(6.0, 6.0);
    StageFindings found =
        job.read("arrival", DISTANCE, "slab.A1-slab.A3", 12.002)
            .read("arrival", DISTANCE, "slab.A3-slab.B3", 9)
            .read("arrival", DISTANCE, "slab.B3-slab.B1", 12)
            .read("arrival", DISTANCE, "slab.B1-slab.A1", 9)
            .reduced("arrival");
    assertEquals(0.002, found.outcome("slab-size", "A1-A3").orElseThrow().deviation(), 1e-12);
    assertTrue(found.outcome("slab-square", "A1").isEmpty());
    Note note = found.notes().get(0);
    assertEquals(Note.Kind.UNDETERMINED, note.kind());
    assertTrue(note.text().contains("Measure next: the distance from slab corner "), note.text());
  }

  @Test
  void withoutLimitsThereAreValuesAndNoVerdicts() {
    StageFindings found = bracedQuadrilateral().reduced("arrival");
    assertTrue(found.outcomes().stream().allMatch(outcome -> outcome.verdict().isEmpty()));
    assertEquals(Answer.Kind.NOT_DECIDED, found.answer().kind());
  }
}
