package datumpeg.analysis.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class LengthDisplayTest {
  /** Second route: the platform's own decimal arithmetic; ties and near ties among them. */
  @Test
  void decimalsAreThoseOfDecimalArithmetic() {
    SplittableRandom random = new SplittableRandom(20261127L);
    for (int trial = 0; trial < 200_000; trial++) {
      int places = random.nextInt(0, 6);
      double tie = (random.nextInt(-2000, 2000) + 0.5) / Math.pow(10, places);
      double value =
          switch (random.nextInt(4)) {
            case 0 -> tie;
            case 1 -> Math.nextUp(tie);
            case 2 -> tie * Math.pow(10, random.nextInt(-6, 12));
            default -> (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(-6, 12));
          };
      BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN);
      String expected = (rounded.signum() == 0 ? rounded.abs() : rounded).toPlainString();
      assertEquals(expected, LengthDisplay.decimal(value, places), value + " to " + places);
      assertEquals(
          (rounded.signum() > 0 ? "+" : "") + expected,
          LengthDisplay.signed(value, places),
          value + " to " + places);
    }
  }

  /** By hand. */
  @Test
  void smallAndNegativeNumbers() {
    assertEquals("0.05", LengthDisplay.decimal(0.049, 2));
    assertEquals("-0.05", LengthDisplay.decimal(-0.049, 2));
    assertEquals("0.0", LengthDisplay.decimal(-0.04, 1));
    assertEquals("-12", LengthDisplay.decimal(-12.4, 0));
    assertEquals("0.125", LengthDisplay.decimal(0.125, 3));
  }
}
