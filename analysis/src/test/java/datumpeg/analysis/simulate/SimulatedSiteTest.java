package datumpeg.analysis.simulate;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static datumpeg.analysis.measuring.MeasuredQuantity.OFFSET;
import static datumpeg.analysis.measuring.MeasuredQuantity.PLUMB_OFFSET;
import static datumpeg.analysis.measuring.MeasuredQuantity.TILT;
import static datumpeg.analysis.simulate.ExamplePlan.mark;
import static datumpeg.analysis.simulate.ExamplePlan.point;
import static datumpeg.analysis.simulate.ExamplePlan.target;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import datumpeg.analysis.building.Position;
import datumpeg.analysis.building.UnknownPointException;
import org.junit.jupiter.api.Test;

class SimulatedSiteTest {
  private static final double EXACT = 1e-12;
  private final SimulatedSite designed = SimulatedSite.asDesigned(ExamplePlan.setOut());

  @Test
  void aSiteAsDesignedHasThePlansDistances() {
    assertEquals(18, designed.distanceMetres(target(DISTANCE, "slab.A1-slab.A4")), EXACT);
    assertEquals(8.572, designed.distanceMetres(target(DISTANCE, "base.A2-base.B2")), EXACT);
    assertEquals(
        5.968 - 0.064,
        designed.distanceMetres(target(DISTANCE, "base.A1/high-base.A2/low")),
        EXACT);
    assertEquals(0, designed.tiltRadians(target(TILT, "column.A3/across"), 1.8));
  }

  /** Isosceles trapezium, sides 12.10, 9, 12.00, 9: equal diagonals, no right angle. */
  @Test
  void aTrapeziumHasEqualDiagonalsAndIsOutOfSquare() {
    SimulatedSite site =
        designed
            .withShift(point("slab.B4"), new Position(-0.018, 0, 0))
            .withShift(point("slab.B1"), new Position(0.018, 0, 0));
    double one = site.distanceMetres(target(DISTANCE, "slab.A1-slab.B4"));
    double other = site.distanceMetres(target(DISTANCE, "slab.A4-slab.B1"));
    assertEquals(one, other, EXACT);
    assertEquals(17.964, site.distanceMetres(target(DISTANCE, "slab.B1-slab.B4")), EXACT);
  }

  @Test
  void aColumnsFacesMoveWithItsBaseAndItsEaveWithItsLeanToo() {
    SimulatedSite site =
        designed
            .withShift(point("base.A3"), new Position(0.018, 0, 0))
            .withColumn(mark("A3"), SimulatedColumn.leaning(0.005, 0.021));
    assertEquals(6.018, site.distanceMetres(target(DISTANCE, "base.A2-base.A3")), EXACT);
    assertEquals(6.018, site.distanceMetres(target(DISTANCE, "base.A2/low-base.A3/low")), EXACT);
    assertEquals(0.214 + 0.021, site.position(point("eave.A3")).yMetres(), EXACT);
    assertEquals(12.018 + 0.005, site.position(point("eave.A3")).xMetres(), EXACT);
    assertEquals(12, site.position(point("seat.A3")).xMetres(), EXACT);
  }

  @Test
  void thePlumbOffsetsDifferByTheLean() {
    SimulatedSite site = designed.withColumn(mark("B2"), SimulatedColumn.leaning(-0.004, 0.009));
    double lean =
        site.plumbOffsetMetres(target(PLUMB_OFFSET, "eave.B2/across"))
            - site.plumbOffsetMetres(target(PLUMB_OFFSET, "base.B2/across"));
    assertEquals(0.009, lean, EXACT);
  }

  @Test
  void anOffsetIsOutwardOnBothWalls() {
    SimulatedSite site =
        designed
            .withShift(point("base.A2"), new Position(0, -0.006, 0))
            .withShift(point("base.B2"), new Position(0, 0.004, 0));
    assertEquals(0.006, site.offsetMetres(target(OFFSET, "base.A2")), EXACT);
    assertEquals(0.004, site.offsetMetres(target(OFFSET, "base.B2")), EXACT);
    assertEquals(0, site.offsetMetres(target(OFFSET, "base.A3")), EXACT);
  }

  @Test
  void theTipDistanceIsTheDrawingsPlusHowFarTheTipsAreApart() {
    SimulatedSite site = designed.withShift(point("tip.B2"), new Position(0, 0.007, 0));
    assertEquals(8.579, site.distanceMetres(target(DISTANCE, "tip.A2-tip.B2")), EXACT);
  }

  @Test
  void aPointThatThePlanLacksOrThatMovesWithAnotherIsRefused() {
    Position shift = new Position(0.01, 0, 0);
    assertThrows(UnknownPointException.class, () -> designed.withShift(point("base.A9"), shift));
    assertThrows(
        UnknownPointException.class, () -> designed.withColumn(mark("C1"), SimulatedColumn.PLUMB));
    assertThrows(IllegalArgumentException.class, () -> designed.withShift(point("eave.A2"), shift));
    assertThrows(
        IllegalArgumentException.class, () -> designed.withShift(point("base.A2/low"), shift));
  }

  @Test
  void aTiltOfWhatIsNoColumnIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> designed.tiltRadians(target(TILT, "mullion.1.M1/across"), 1));
  }
}
