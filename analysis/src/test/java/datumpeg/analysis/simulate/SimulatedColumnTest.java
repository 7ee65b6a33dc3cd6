package datumpeg.analysis.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import datumpeg.analysis.measuring.Axis;
import org.junit.jupiter.api.Test;

class SimulatedColumnTest {
  private static final double HEIGHT = 3.6;

  /** 21 mm in 3.6 m: atan(21/3600) = 0.334222 deg, by hand. */
  @Test
  void aStraightColumnHasOneTiltAtEveryHeight() {
    SimulatedColumn column = SimulatedColumn.leaning(0, 0.021);
    for (double up : new double[] {0, 1.2, 1.8, 3.6}) {
      double tilt = column.tiltRadians(Axis.ACROSS, up, HEIGHT);
      assertEquals(0.334222, StrictMath.toDegrees(tilt), 1e-6);
      assertEquals(0.021 * up / HEIGHT, column.offPlumbMetres(Axis.ACROSS, up, HEIGHT), 1e-15);
    }
    assertEquals(0, column.tiltRadians(Axis.ALONG, 1, HEIGHT));
  }

  @Test
  void aBowIsGreatestAtMidHeightAndGoneAtBothEnds() {
    SimulatedColumn column = new SimulatedColumn(0, 0, 0.0036, 0);
    assertEquals(0.0036, column.offPlumbMetres(Axis.ALONG, 1.8, HEIGHT), 1e-15);
    assertEquals(0, column.offPlumbMetres(Axis.ALONG, 0, HEIGHT), 1e-15);
    assertEquals(0, column.offPlumbMetres(Axis.ALONG, 3.6, HEIGHT), 1e-15);
    assertEquals(0, column.tiltRadians(Axis.ALONG, 1.8, HEIGHT), 1e-15);
  }

  /** Two routes: the tilt against the slope of the offsets, by central difference. */
  @Test
  void theTiltIsTheSlopeOfTheAxis() {
    SimulatedColumn column = new SimulatedColumn(0.012, -0.007, 0.003, -0.002);
    for (Axis axis : Axis.values()) {
      for (double up : new double[] {0.3, 1.5, 3.0}) {
        double step = 1e-5;
        double slope =
            (column.offPlumbMetres(axis, up + step, HEIGHT)
                    - column.offPlumbMetres(axis, up - step, HEIGHT))
                / (2 * step);
        assertEquals(slope, StrictMath.tan(column.tiltRadians(axis, up, HEIGHT)), 1e-9);
      }
    }
  }

  @Test
  void aLeanThatIsNotANumberIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new SimulatedColumn(Double.NaN, 0, 0, 0));
  }
}
