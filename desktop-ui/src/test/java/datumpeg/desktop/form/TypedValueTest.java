package datumpeg.desktop.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.desktop.form.FormField.Shape;
import org.junit.jupiter.api.Test;

class TypedValueTest {
  private static String metric(Shape shape, String typed) {
    return TypedValue.written(shape, typed, LengthDisplay.METRIC);
  }

  private static String feet(Shape shape, String typed) {
    return TypedValue.written(shape, typed, LengthDisplay.IMPERIAL);
  }

  @Test
  void numberWithoutAUnitIsInTheUsersUnit() {
    assertEquals("9000 mm", metric(Shape.LENGTH, "9000"));
    assertEquals("8 in", feet(Shape.LENGTH, "8"));
    assertEquals("3/8 in", feet(Shape.LIMIT, "3/8"));
    assertEquals("10 deg", metric(Shape.ANGLE, " 10 "));
    assertEquals("6000 mm; 6,5 m", metric(Shape.LENGTHS, "6000; 6,5 m"));
    assertEquals("20 ft 6 in; 20'", feet(Shape.LENGTHS, "20-6, 20'"));
  }

  @Test
  void numberMayHaveASign() {
    assertEquals("-500 mm", metric(Shape.LENGTH, "-500"));
    assertEquals("-2.5 m", metric(Shape.LENGTH, "-2.5 m"));
    assertEquals(-0.5, TypedValue.metres("-500 mm").orElseThrow());
  }

  @Test
  void temperatureWithoutAUnitIsInTheUsersDegrees() {
    assertEquals("-4.5 degC", metric(Shape.TEMPERATURE, "-4,5"));
    assertEquals("54 degF", feet(Shape.TEMPERATURE, "54"));
    assertEquals("12 degC", feet(Shape.TEMPERATURE, "12 degC"));
    assertEquals("5 degC; 35 degC", metric(Shape.TEMPERATURES, "5; 35"));
    assertEquals("3 K", metric(Shape.WARMER, "3"));
    assertEquals("warm", metric(Shape.TEMPERATURE, "warm"));
    assertEquals("12 °C", TypedValue.temperature("12 degC"));
    assertEquals("", TypedValue.temperature("warm"));
  }

  @Test
  void whatHasAUnitOrIsNoNumberStaysAsItIsTyped() {
    for (String typed : new String[] {"9 m", "29' 6 3/8\"", "steep", "", "-", "en1090-bow"}) {
      assertEquals(typed, metric(Shape.LENGTH, typed));
      assertEquals(typed, feet(Shape.LIMIT, typed));
    }
    assertEquals("9000", metric(Shape.TEXT, "9000"));
  }

  /** NIST SP 811 (2008), appendix B.8: one foot is 0.3048 m exactly, so one inch 0.0254 m. */
  @Test
  void lengthsOfALimitAreInTheUsersUnit() {
    assertEquals(
        "lower -5 mm, upper 10 mm",
        TypedValue.written(Shape.LIMIT, "lower -5, upper 10 mm", LengthDisplay.METRIC));
    assertEquals(
        "ratio 500, cap 1 in",
        TypedValue.written(Shape.LIMIT, "ratio 500, cap 1", LengthDisplay.IMPERIAL));
    assertEquals(
        "upper 10 mm, source cap 5, sheet 2",
        TypedValue.written(Shape.LIMIT, "upper 10, source cap 5, sheet 2", LengthDisplay.METRIC));
    assertEquals("12 mm", TypedValue.written(Shape.LIMIT, "12", LengthDisplay.METRIC));
  }

  @Test
  void sizesAndLimitsOfStepsAreInTheUsersUnit() {
    assertEquals(
        "up to 3000 mm: 8 mm, beyond 12,5 mm, source cap 5: sheet 2",
        metric(Shape.LIMIT, "up to 3000: 8, beyond 12,5, source cap 5: sheet 2"));
    assertEquals(
        "at 3 ft 6 in: 3/8 in; at 12 ft: 0.5 in, to whole mm",
        feet(Shape.LIMIT, "at 3-6: 3/8; at 12 ft: 0.5, to whole mm"));
    assertEquals(
        "up to 5 m: 10 mm, beyond: 9 mm + 0.2 mm per m",
        metric(Shape.LIMIT, "up to 5 m: 10, beyond: 9 + 0.2 per m"));
    assertEquals("formula 4 + 2*L", metric(Shape.LIMIT, "formula 4 + 2*L"));
  }

  @Test
  void feetAndInchesWithADashAreRead() {
    assertEquals("29 ft 6 3/8 in", feet(Shape.LENGTH, "29-6 3/8"));
    double metres = 29 * 0.3048 + 6.375 * 0.0254;
    assertEquals(metres, TypedValue.metres("29 ft 6 3/8 in").orElseThrow(), 1e-12);
  }

  /** A pitch told as rise in run is the angle with that tangent: EN ISO 80000-2 defines tan. */
  @Test
  void slopeIsTheAngleWithThatTangent() {
    for (String typed : new String[] {"4:12", "4 in 12", "1:3"}) {
      String written = feet(Shape.ANGLE, typed);
      assertEquals("1:3", written);
      assertEquals(
          StrictMath.atan(4.0 / 12), TypedValue.radians(written).orElseThrow(), 1e-12, typed);
    }
    String seven = metric(Shape.ANGLE, "7:12");
    assertEquals(StrictMath.atan(7.0 / 12), TypedValue.radians(seven).orElseThrow(), 1e-6);
    assertEquals("0 deg", metric(Shape.ANGLE, "0:12"));
  }

  @Test
  void whatIsNoLengthYetIsNone() {
    assertTrue(TypedValue.metres("9").isEmpty());
    assertTrue(TypedValue.metres("10 deg").isEmpty());
    assertTrue(TypedValue.radians("10 mm").isEmpty());
    assertEquals(2, TypedValue.allMetres("6 m; 6; 5 m").length);
    assertEquals(0, TypedValue.allMetres("").length);
  }
}
