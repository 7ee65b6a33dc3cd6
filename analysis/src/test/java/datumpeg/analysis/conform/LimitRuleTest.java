package datumpeg.analysis.conform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LimitRuleTest {
  private static final double INFINITE = Double.POSITIVE_INFINITY;

  private static LimitRule.Steps steps(LimitRule.Interpolation between, double... sizesAndLimits) {
    List<LimitRule.Step> steps = new java.util.ArrayList<>();
    for (int i = 0; i < sizesAndLimits.length; i += 2) {
      steps.add(new LimitRule.Step(sizesAndLimits[i], sizesAndLimits[i + 1] / 1000));
    }
    return new LimitRule.Steps(
        steps, between, between == LimitRule.Interpolation.LINEAR ? 0.001 : 0);
  }

  @Test
  void withoutInterpolationALimitHoldsUpToAndIncludingItsSize() {
    LimitRule rule = steps(LimitRule.Interpolation.NONE, 1, 10, 3, 12, INFINITE, 16);
    assertEquals(0.010, rule.upperMetres(0.2), 1e-12);
    assertEquals(0.010, rule.upperMetres(1), 1e-12);
    assertEquals(0.012, rule.upperMetres(1.001), 1e-12);
    assertEquals(-0.012, rule.lowerMetres(3), 1e-12);
    assertEquals(0.016, rule.upperMetres(100), 1e-12);
  }

  /** 7/8 in and 22.225 mm, or 0.2 m + 4.9 m + 0.9 m and 6 m, are not the same double. */
  @Test
  void aSizeThatIsAnEndInAnotherUnitOrAsASumIsThatEnd() {
    double inches = 7 / 8.0 * 0.0254;
    double sum = 0.2 + 4.9 + 0.9;
    assertTrue(0.022225 > inches && sum > 6);
    LimitRule stepped = steps(LimitRule.Interpolation.NONE, inches, 6, 6, 16, INFINITE, 20);
    assertEquals(0.006, stepped.upperMetres(0.022225), 1e-12);
    assertEquals(0.016, stepped.upperMetres(sum), 1e-12);
    LimitRule pieces =
        new LimitRule.Pieces(
            List.of(new LimitRule.Piece(6, 0.016, 0), new LimitRule.Piece(INFINITE, 0.020, 0.001)));
    assertEquals(0.016, pieces.upperMetres(sum), 1e-12);
  }

  /** By hand: half way between 10 at 1 m and 13 at 4 m lies 11.5, which rounds up to 12. */
  @Test
  void interpolationIsLinearAndRoundsHalfUp() {
    LimitRule rule = steps(LimitRule.Interpolation.LINEAR, 1, 10, 4, 13);
    assertEquals(0.012, rule.upperMetres(2.5), 1e-12);
    assertEquals(0.011, rule.upperMetres(2.4), 1e-12);
    assertEquals(0.010, rule.upperMetres(0.3), 1e-12);
    assertEquals(0.013, rule.upperMetres(20), 1e-12);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "4; 6; 4",
        "20 + 0.25*(L - 30); 48; 24.5",
        "max(4, 1.5*sqrt(L)); 20; 6.708204",
        "min(25, 1000*L/500); 4.2; 8.4",
        "min(25, 1000 * L / 500); 15; 25",
        "max(3, L); 2; 3",
        "min(50, 9, L+1); 4; 5",
        "-(-5); 1; 5",
        "2*3+4; 1; 10",
        "2+3*4; 1; 14",
        "12/4/3; 1; 1",
        "10-3-2; 1; 5",
      })
  void formulaIsReckonedInMetresAndMillimetres(String text, double size, double millimetres) {
    LimitRule rule = new LimitRule.Formula(text);
    assertEquals(millimetres / 1000, rule.upperMetres(size), 1e-9);
    assertEquals(-millimetres / 1000, rule.lowerMetres(size), 1e-9);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "4 +; has its end at its character 4; expected a number",
        "x; has 'x' at its character 1; expected a number, L",
        "4 4; has '4' at its character 3; expected +, -",
        "sqrt 4; has '4' at its character 6; expected '('",
        "max(4; has its end at its character 6; expected ')'",
        "1.2.3; has '1' at its character 1; expected a number such as 0.25",
        "L - 5; gives -4.9 mm for L = 0.1 m; expected more than 0",
        "10 / (L - L); gives Infinity mm",
        "sqrt(0 - L); gives NaN mm",
      })
  void whatIsNoFormulaIsSaidWithItsPlace(String text, String expected) {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> new LimitRule.Formula(text));
    assertTrue(String.valueOf(refused.getMessage()).contains(expected), refused.getMessage());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, 0, 0.01, 5000, INFINITE})
  void formulaHasALimitForASizeOutsideItsRange(double size) {
    double limit = new LimitRule.Formula("max(4, 1.5*sqrt(L))").upperMetres(size);
    assertTrue(limit >= 0.004 && limit < 0.05, "limit " + limit);
  }

  @Test
  void stepsThatMakeNoSenseAreRefused() {
    assertThrows(
        IllegalArgumentException.class, () -> steps(LimitRule.Interpolation.NONE, 3, 1, 2, 1));
    assertThrows(IllegalArgumentException.class, () -> steps(LimitRule.Interpolation.NONE, 3, 0));
    assertThrows(IllegalArgumentException.class, () -> steps(LimitRule.Interpolation.NONE));
    assertThrows(
        IllegalArgumentException.class,
        () -> steps(LimitRule.Interpolation.LINEAR, 3, 1, INFINITE, 2));
  }

  @Test
  void oneSideMayHaveNoLimit() {
    Tolerance atLeast = new Tolerance(new LimitRule.Constant(-0.005, INFINITE), "invented");
    assertTrue(atLeast.signed(1).upper().isEmpty());
    assertEquals(-0.005, atLeast.signed(1).lower().orElseThrow(), 1e-12);
    assertTrue(atLeast.unsigned(1).upper().isEmpty());
    assertThrows(IllegalArgumentException.class, () -> new LimitRule.Constant(-INFINITE, INFINITE));
  }
}
