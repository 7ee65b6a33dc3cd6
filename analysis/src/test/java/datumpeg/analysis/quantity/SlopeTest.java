package datumpeg.analysis.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Slopes as ratios, degrees and millimetres a metre: arctangents and tangents, computed apart. */
class SlopeTest {
  @ParameterizedTest
  @CsvSource({
    "1:150, 0.38197",
    "1:300, 0.19099",
    "1:500, 0.114591",
    "1:600, 0.095493",
    "1:1000, 0.057296"
  })
  void ratiosAreAngles(String ratio, double degrees) {
    assertEquals(degrees, StrictMath.toDegrees(Quantity.angleRadians(ratio)), 5.1e-6);
    String perMetre =
        new BigDecimal(1000)
            .divide(new BigDecimal(ratio.substring(2)), 6, RoundingMode.HALF_EVEN)
            .toPlainString();
    assertEquals(
        Quantity.angleRadians(ratio),
        Quantity.angleRadians(perMetre + " mm/m"),
        1e-9,
        "so many millimetres a metre");
  }

  @ParameterizedTest
  @CsvSource({
    "0.05 deg, 3, 2.618",
    "0.05 deg, 6, 5.236",
    "0.1 deg, 3, 5.236",
    "0.1 deg, 6, 10.472"
  })
  void anglesAreOffsetsOverAHeight(String angle, double height, double millimetres) {
    assertEquals(millimetres, 1000 * height * StrictMath.tan(Quantity.angleRadians(angle)), 5.1e-4);
  }

  /** A meter of ±0.1° is hardly better than the H/500 it should prove: 1.1 to 1. */
  @Test
  void aTenthOfADegreeCannotProveAFiveHundredth() {
    double ratio = Quantity.angleRadians("1:500") / Quantity.angleRadians("0.1 deg");
    assertEquals(1.1459, ratio, 5e-5);
  }
}
