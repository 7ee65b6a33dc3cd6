package datumpeg.bridge.meter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.meter.MeterLanguage.TextLines;
import datumpeg.bridge.meter.MeterProfile.AngleZero;
import datumpeg.bridge.meter.MeterProfile.Sign;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeterProfileTest {

  private static MeterProfile profile(String id, Sign sign, AngleZero zero) {
    return new MeterProfile(
        id, SerialSettings.DEFAULT, new TextLines(100, Unit.DEGREE), sign, zero, null);
  }

  @Test
  void theIdentityOfTheShippedProfileDoesNotChangeUnnoticed() {
    // From the text by another route: printf of the canonical text into sha256sum (coreutils).
    assertEquals(
        "general-text-line@6c4b3e4f7578a6c139d9d2a6971e29cb08913432f00dd7f79479e34ba9ceab71",
        MeterProfiles.GENERAL_TEXT_LINE.identity());
  }

  @Test
  void theIdentityDoesNotDependOnTheLanguageOfTheMachine() {
    String identity = MeterProfiles.GENERAL_TEXT_LINE.identity();
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertEquals(identity, MeterProfiles.GENERAL_TEXT_LINE.identity());
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void everyPropertyIsPartOfTheIdentity() {
    MeterProfile plain = profile("a", Sign.AS_SENT, AngleZero.PLUMB);
    assertEquals(plain.identity(), profile("a", Sign.AS_SENT, AngleZero.PLUMB).identity());
    assertNotEquals(plain.identity(), profile("b", Sign.AS_SENT, AngleZero.PLUMB).identity());
    assertNotEquals(plain.identity(), profile("a", Sign.REVERSED, AngleZero.PLUMB).identity());
    assertNotEquals(plain.identity(), profile("a", Sign.AS_SENT, AngleZero.LEVEL).identity());
    MeterProfile accurate =
        new MeterProfile(
            "a",
            SerialSettings.DEFAULT,
            new TextLines(100, Unit.DEGREE),
            Sign.AS_SENT,
            AngleZero.PLUMB,
            new Meter(
                "a",
                MeasuredQuantity.TILT,
                new MeterAccuracy(0.001, 0.001, 0, 0.001),
                "meter profile a"));
    assertNotEquals(plain.identity(), accurate.identity());
  }

  @ParameterizedTest
  @CsvSource({
    "AS_SENT, PLUMB, 0.3, 0.3",
    "REVERSED, PLUMB, 0.3, -0.3",
    "AS_SENT, LEVEL, 90.3, 0.3",
    "AS_SENT, LEVEL, 89.7, -0.3",
    "AS_SENT, LEVEL, -90.3, -0.3",
    "REVERSED, LEVEL, 90.3, -0.3"
  })
  void anglesAreFromPlumbUnderTheConventionsOfTheProfile(
      Sign sign, AngleZero zero, double sentDegrees, double leanDegrees) {
    double sent = Math.toRadians(sentDegrees);
    Measured measured = new Measured(Double.toString(sentDegrees), Unit.DEGREE, sent);
    assertEquals(Math.toRadians(leanDegrees), profile("a", sign, zero).valueSi(measured), 1e-12);
  }

  /** The record works out the number again from the text: the two must say the same. */
  @ParameterizedTest
  @CsvSource({
    "REVERSED, PLUMB, 0.30, DEGREE, -0.30, DEGREE",
    "REVERSED, PLUMB, -0.30, DEGREE, 0.30, DEGREE",
    "AS_SENT, LEVEL, 90.30, DEGREE, 0.30, DEGREE",
    "REVERSED, LEVEL, -89.70, DEGREE, -0.30, DEGREE",
    "REVERSED, PLUMB, '1,250', METRE, -1.250, METRE",
    "AS_SENT, LEVEL, 1.58, RADIAN, 0.009203673205, RADIAN"
  })
  void textAndNumberStayOneValue(
      Sign sign, AngleZero zero, String sent, Unit unit, String kept, Unit keptUnit) {
    double number = Double.parseDouble(sent.replace(',', '.'));
    Measured read = profile("a", sign, zero).read(new Measured(sent, unit, unit.toSi(number)));
    assertEquals(kept, read.valueText());
    assertEquals(keptUnit, read.unit());
    assertEquals(
        Quantity.parse(read.valueText(), read.unit().symbol()).siValue(), read.siValue(), 1e-15);
  }

  @Test
  void feetAndInchesAreReversedByTheirSign() {
    Measured sent = new Measured("29' 6 3/8\"", Unit.FOOT_AND_INCH, 8.9948);
    Measured read = profile("a", Sign.REVERSED, AngleZero.PLUMB).read(sent);
    assertEquals("-29' 6 3/8\"", read.valueText());
    assertEquals(-8.9948, read.siValue());
  }

  @Test
  void lengthsKnowNoPlumb() {
    Measured length = new Measured("5", Unit.METRE, 5);
    assertEquals(5, profile("a", Sign.AS_SENT, AngleZero.LEVEL).valueSi(length));
  }

  @Test
  void anIdIsLettersDigitsAndHyphens() {
    assertThrows(
        IllegalArgumentException.class, () -> profile("a b", Sign.AS_SENT, AngleZero.PLUMB));
  }
}
