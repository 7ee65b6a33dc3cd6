package datumpeg.analysis.building;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SetOutTest {
  /*
   * Drawn by hand, in mm: end line offset 50, columns 100 wide, bays 5000 + 4000 + 4500, so the
   * slab is 13500 + 2 · 50 = 13600 long. First and last bay run from the end line, the others
   * centre to centre.
   *
   *   slab edge   frame 1           frame 2             frame 3             frame 4     slab edge
   *   |          |#####|             |#####|             |#####|             |#####|          |
   *   0         50 100 150       5000 5050 5100      9000 9050 9100   13450 13500 13550   13600
   *             |<------ 5000 ------->|<------ 4000 ------>|<------- 4500 ------->|
   *          end line               centre               centre               end line
   *
   * End bay, frame 2 less frame 1:    Inner bay, frame 3 less frame 2:
   *            low   mid   high                  low   mid   high
   *   low     4950  5000  5050          low     4000  4050  4100
   *   mid     4900  4950  5000          mid     3950  4000  4050
   *   high    4850  4900  4950          high    3900  3950  4000
   */
  private final SetOut drawn =
      DrawnBuildings.gable(
          9,
          0.050,
          List.of(5.0, 4.0, 4.5),
          DrawnBuildings.sections(0.100, RafterEnd.SQUARE, OptionalDouble.empty()));

  @ParameterizedTest
  @CsvSource({
    "1, low,  2, low,  4950", "1, low,  2, mid,  5000", "1, low,  2, high, 5050",
    "1, mid,  2, low,  4900", "1, mid,  2, mid,  4950", "1, mid,  2, high, 5000",
    "1, high, 2, low,  4850", "1, high, 2, mid,  4900", "1, high, 2, high, 4950",
    "2, low,  3, low,  4000", "2, low,  3, mid,  4050", "2, low,  3, high, 4100",
    "2, mid,  3, low,  3950", "2, mid,  3, mid,  4000", "2, mid,  3, high, 4050",
    "2, high, 3, low,  3900", "2, high, 3, mid,  3950", "2, high, 3, high, 4000",
    "3, low,  4, high, 4550", "3, mid,  4, mid,  4450", "3, high, 4, low,  4350",
    "1, low,  4, high, 13500",
  })
  void nominalBetweenFacesIsThatOfTheDrawing(
      int frame, String face, int otherFrame, String otherFace, double millimetres) {
    for (String feature : List.of("base.A", "eave.B", "apex.")) {
      PointName one = PointName.parse(feature + frame + "/" + face).orElseThrow();
      PointName other = PointName.parse(feature + otherFrame + "/" + otherFace).orElseThrow();
      assertEquals(millimetres / 1000, drawn.nominalDistanceMetres(one, other), 1e-9, feature);
      assertEquals(millimetres / 1000, drawn.nominalDistanceMetres(other, one), 1e-9, feature);
    }
  }

  /** Pythagoras: 9² + 12² = 15². */
  @Test
  void slabAndLinesOfNineByTwelveMetresHaveDiagonalsOfFifteen() {
    SetOut slab =
        DrawnBuildings.gable(
            9, 0, List.of(6.0, 6.0), DrawnBuildings.sections(OptionalDouble.empty()));
    assertEquals(15, between(slab, "slab.A1", "slab.B3"), 1e-12);
    SetOut lines =
        DrawnBuildings.gable(
            9 + 2 * 0.214, 0, List.of(6.0, 6.0), DrawnBuildings.sections(OptionalDouble.empty()));
    assertEquals(15, lines.lineDiagonalMetres(), 1e-12);
    assertEquals(15, between(lines, "line.A1", "line.B3"), 1e-12);
    assertEquals(15, between(lines, "line.A3", "line.B1"), 1e-12);
  }

  /** Pythagoras; the roots computed apart. */
  @ParameterizedTest
  @CsvSource({"12, 9, 15", "20, 12, 23.323808", "30, 15, 33.541020"})
  void diagonalsOfSlabsAreTheirRoots(double length, double span, double diagonal) {
    SetOut slab =
        DrawnBuildings.gable(
            span,
            0,
            List.of(length / 2, length / 2),
            DrawnBuildings.sections(OptionalDouble.empty()));
    assertEquals(diagonal, between(slab, "slab.A1", "slab.B3"), 5e-7);
    assertEquals(diagonal, between(slab, "slab.B1", "slab.A3"), 5e-7);
  }

  /** Common practice, no source: 150 + 64 = 214; 9000 − 2 · 214 = 8572. */
  @Test
  void clearSpanIsWhatTheColumnLinesLeave() {
    assertEquals(0.214, DrawnBuildings.shed().columnLineOffsetMetres(), 1e-12);
    assertEquals(8.572, DrawnBuildings.shed().clearSpanMetres(), 1e-12);
    assertEquals(8.572, DrawnBuildings.shed().tipDistanceMetres().orElseThrow(), 1e-12);
  }

  @Test
  void bottomCornersOfSquareEndsAreCloserThanTheTips() {
    assertEquals(
        2 * 0.150 * Math.sin(Math.toRadians(10)),
        DrawnBuildings.shed().bottomCornerShortfallMetres(),
        1e-15);
    SetOut plumb =
        DrawnBuildings.gable(
            9,
            0,
            List.of(6.0),
            DrawnBuildings.sections(0.064, RafterEnd.PLUMB, OptionalDouble.empty()));
    assertEquals(0, plumb.bottomCornerShortfallMetres());
  }

  /** A 3-4-5 roof: rafters of 5 m over a tip distance of 8 m rise 3 m. */
  @Test
  void rafterLengthDecidesThePitch() {
    SetOut roof = withRafters(8 + 2 * 0.214, 5);
    double pitch = roof.pitchFromRafterLengthRadians().orElseThrow();
    assertEquals(StrictMath.atan(3.0 / 4), pitch, 1e-12);
  }

  /** The derivative −½·cot θ against a difference of two heights. */
  @Test
  void apexComesDownAsTheTipsGoApart() {
    double pitch = StrictMath.atan(3.0 / 4);
    double step = 1e-6;
    double rise = (apexHeight(5, 8 + step) - apexHeight(5, 8 - step)) / (2 * step);
    assertEquals(rise, SetOut.apexMovePerTipDistance(pitch), 1e-8);
    assertEquals(-2.0 / 3, SetOut.apexMovePerTipDistance(pitch), 1e-12);
  }

  private static double apexHeight(double rafter, double tips) {
    return Math.sqrt(rafter * rafter - tips * tips / 4);
  }

  @Test
  void raftersTooShortForTheTipDistanceHaveNoPitch() {
    assertTrue(withRafters(8 + 2 * 0.214, 4).pitchFromRafterLengthRadians().isEmpty());
    assertTrue(DrawnBuildings.shed().pitchFromRafterLengthRadians().isEmpty());
  }

  private static SetOut withRafters(double span, double rafterLength) {
    return DrawnBuildings.gable(
        span, 0, List.of(6.0), DrawnBuildings.sections(OptionalDouble.of(rafterLength)));
  }

  @Test
  void pointBeyondTheGridIsUnknown() {
    assertThrows(
        UnknownPointException.class,
        () -> drawn.position(PointName.parse("base.A5").orElseThrow()));
  }

  @Test
  void slabCoversItsInsideAndItsEdgeButNotTheNotch() {
    // An L: 10 × 6 with the corner beyond (6, 4) cut out.
    Map<String, PlanPoint> corners = new LinkedHashMap<>();
    corners.put("P1", new PlanPoint(0, 0));
    corners.put("P2", new PlanPoint(10, 0));
    corners.put("P3", new PlanPoint(10, 4));
    corners.put("P4", new PlanPoint(6, 4));
    corners.put("P5", new PlanPoint(6, 6));
    corners.put("P6", new PlanPoint(0, 6));
    Slab slab = new Slab(corners, List.of(), List.of());
    assertTrue(slab.covers(new PlanPoint(5, 5)));
    assertTrue(slab.covers(new PlanPoint(10, 2)));
    assertTrue(slab.covers(new PlanPoint(6, 4)));
    assertTrue(slab.covers(new PlanPoint(0, 6)));
    assertTrue(!slab.covers(new PlanPoint(8, 5)));
    assertTrue(!slab.covers(new PlanPoint(-0.002, 3)));
  }

  private static double between(SetOut setOut, String one, String other) {
    return setOut.nominalDistanceMetres(
        PointName.parse(one).orElseThrow(), PointName.parse(other).orElseThrow());
  }
}
