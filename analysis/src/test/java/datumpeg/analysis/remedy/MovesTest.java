package datumpeg.analysis.remedy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.PropGeometry;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.reduce.InventedJob;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class MovesTest {
  /** 18 by 9 m, eaves at 3.6 m, pitch 10°. */
  private static final SetOut SET_OUT = new InventedJob().build().setOut();

  private static final Movability ALL = new Movability(true, true, true);
  private static final Movability NOTHING = new Movability(false, false, false);

  private static Outcome outcome(String check, String target, double deviation, double expanded) {
    return new Outcome(
        check,
        target,
        1,
        OutcomeUnit.MILLIMETRE,
        OptionalDouble.of(0),
        deviation,
        deviation,
        expanded,
        2,
        Optional.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        false,
        "",
        "",
        List.of());
  }

  /** ½·cot 10° = 2.83564: 8 mm wider brings the apex 22.7 mm down, U 1 mm becomes 2.8 mm. */
  @Test
  void openingTheTipsLowersTheApex() {
    assertEquals(
        "Open the tips by 8.0 ± 1.0 mm; at fixed rafter length the apex comes down by 22.7 ± 2.8 mm.",
        RafterTips.remedy(outcome("rafter-pair", "2", -0.008, 0.001), SET_OUT, ALL));
    assertTrue(
        RafterTips.remedy(outcome("rafter-pair", "2", 0.008, 0.001), SET_OUT, NOTHING)
            .startsWith("Fixed by now: ask the engineer. It would take to close the tips by 8.0"));
  }

  /** √(18000² + 3600²) = 18356.5 mm. */
  @Test
  void aRackedFrameIsPushedBackUntilItsDiagonalsReadTheSame() {
    assertEquals(
        "Push the eave corner at frame 4 of wall A toward end 1 by 12.0 ± 2.0 mm; it is right when"
            + " both diagonals read 18356.5 mm.",
        Racking.remedy(outcome("wall-square", "A", 0.012, 0.002), SET_OUT, ALL));
    assertTrue(
        Racking.remedy(outcome("wall-square", "B", -0.012, 0.002), SET_OUT, ALL)
            .startsWith("Push the eave corner at frame 1 of wall B toward end n"));
  }

  /** 18.326 · 2.8/4.2 · cos 50° = 7.853 mm, U 5.183 becomes 2.221 mm, by hand. */
  @Test
  void aPropIsLengthenedByTheShareOfItsAttachmentAndItsSlope() {
    PropGeometry props = new PropGeometry(2.8, StrictMath.toRadians(50));
    assertEquals(
        "Push the top of column A2 toward side A by 18.3 ± 5.2 mm with its prop (a prop standing"
            + " toward side B longer, one toward side A shorter, by 7.9 ± 2.2 mm), starting at the"
            + " braced bay and working outward, then read it and its neighbours again.",
        Plumbing.remedy(
            outcome("column-plumb", "A2/across", 0.018326, 0.005183),
            "A2",
            Axis.ACROSS,
            ALL,
            4.2,
            Optional.of(props)));
  }

  /**
   * Exactly, by the triangle: foot 2.3495 m out, held at 2.8 m; a push of 12.217 mm at the hold.
   */
  @Test
  void theSmallMoveAgreesWithTheTriangle() {
    PropGeometry props = new PropGeometry(2.8, StrictMath.toRadians(50));
    double foot = 2.8 / StrictMath.tan(StrictMath.toRadians(50));
    double before = Math.sqrt(foot * foot + 2.8 * 2.8);
    double after = Math.sqrt((foot + 0.012217) * (foot + 0.012217) + 2.8 * 2.8);
    assertEquals(after - before, props.lengtheningMetres(0.018326, 4.2), 2e-5);
  }

  @Test
  void propsThatCannotStandAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> new PropGeometry(0, 1));
    assertThrows(
        IllegalArgumentException.class, () -> new PropGeometry(2, StrictMath.toRadians(90)));
    assertThrows(IllegalArgumentException.class, () -> new PropGeometry(2, Double.NaN));
  }
}
