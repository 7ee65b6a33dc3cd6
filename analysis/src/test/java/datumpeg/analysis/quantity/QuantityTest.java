package datumpeg.analysis.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class QuantityTest {
  private static String refusal(Executable reading) {
    return String.valueOf(assertThrows(QuantityFormatException.class, reading).getMessage());
  }

  @Test
  void aWrongUnitOfALengthIsAnsweredWithUnitsOfLengthsAlone() {
    for (String message :
        new String[] {
          refusal(() -> Quantity.lengthMetres("12 furlong")),
          refusal(() -> Quantity.parse("12 furlong", "", Dimension.LENGTH)),
          refusal(() -> Quantity.parse("12", "furlong", Dimension.LENGTH))
        }) {
      assertTrue(message.contains("one of m, mm, cm, ft, in, ft-in"), message);
      assertFalse(message.contains("deg") || message.contains("rad"), message);
    }
  }

  @Test
  void aWrongUnitOfAnAngleIsAnsweredWithUnitsOfAnglesAlone() {
    for (String message :
        new String[] {
          refusal(() -> Quantity.angleRadians("12 gon")),
          refusal(() -> Quantity.parse("12", "gon", Dimension.ANGLE))
        }) {
      assertTrue(message.contains("one of deg, rad, mm/m, %"), message);
      assertFalse(message.contains("cm") || message.contains("ft"), message);
    }
  }

  @Test
  void whereEitherMayBeMeantBothAreOffered() {
    assertTrue(refusal(() -> Quantity.parse("12 furlong")).contains("ft-in or deg, rad"));
    assertTrue(refusal(() -> Quantity.parse("12", "furlong")).contains("ft-in or deg, rad"));
  }

  @Test
  void whatIsOfTheOtherKindIsReadAndRefusedOnlyWhereItDoesNotFit() {
    assertEquals(Dimension.ANGLE, Quantity.parse("12 deg", "", Dimension.LENGTH).dimension());
    assertTrue(refusal(() -> Quantity.lengthMetres("12 deg")).contains("is an angle"));
  }
}
