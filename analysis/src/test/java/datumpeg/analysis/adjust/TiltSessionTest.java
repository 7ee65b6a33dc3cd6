package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class TiltSessionTest {
  private static final String ZERO = "tilt meter|1 zero";
  private static final double U = Math.toRadians(0.02);
  private static final double ZERO_UNCERTAINTY = Math.toRadians(0.1);

  private static TiltReading reading(String target, TiltFace face, double degrees) {
    return new TiltReading(
        target,
        face,
        new Observation(
            target + face,
            Math.toRadians(degrees),
            U,
            List.of(new CommonPart(ZERO, ZERO_UNCERTAINTY))));
  }

  /** 0.32 and -0.18 degrees: tilt 0.25, zero 0.07, 18.326 mm over 4200 mm (by hand). */
  @Test
  void reversalFreesTheTiltOfTheZeroError() {
    TiltReversal reversal = TiltReversal.of(new Estimate(0.32, 0.02), new Estimate(-0.18, 0.02));
    assertEquals(0.25, reversal.tilt().value(), 1e-12);
    assertEquals(0.07, reversal.zeroError().value(), 1e-12);
    assertEquals(0.02 / Math.sqrt(2), reversal.tilt().standardUncertainty(), 1e-15);
    assertEquals(18.326, 4200 * Math.tan(Math.toRadians(reversal.tilt().value())), 1e-3);
  }

  @Test
  void twoFacesGiveTheReversalWhateverTheZeroMayBe() {
    AdjustedTilts tilts =
        new TiltSession(
                List.of(reading("a", TiltFace.ONE, 0.32), reading("a", TiltFace.TWO, -0.18)))
            .adjust();
    assertEquals(0.25, Math.toDegrees(tilts.tilt("a").value()), 1e-12);
    assertEquals(U / Math.sqrt(2), tilts.tilt("a").standardUncertainty(), 1e-12);
    double variance = ZERO_UNCERTAINTY * ZERO_UNCERTAINTY;
    assertEquals(
        0.07 * variance / (variance + U * U / 2),
        Math.toDegrees(tilts.zeroError(ZERO).value()),
        1e-12);
  }

  @Test
  void oneFaceAloneCarriesTheZeroError() {
    AdjustedTilts tilts = new TiltSession(List.of(reading("b", TiltFace.ONE, 0.32))).adjust();
    assertEquals(0.32, Math.toDegrees(tilts.tilt("b").value()), 1e-12);
    assertEquals(
        Estimate.combine(U, ZERO_UNCERTAINTY), tilts.tilt("b").standardUncertainty(), 1e-12);
    assertEquals(new Estimate(0, ZERO_UNCERTAINTY).value(), tilts.zeroError(ZERO).value(), 1e-15);
    assertEquals(ZERO_UNCERTAINTY, tilts.zeroError(ZERO).standardUncertainty(), 1e-12);
  }

  @Test
  void targetsOnTwoFacesCalibrateThoseOnOne() {
    List<TiltReading> readings = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      readings.add(reading("both" + i, TiltFace.ONE, 0.1 * i + 0.07));
      readings.add(reading("both" + i, TiltFace.TWO, -0.1 * i + 0.07));
    }
    readings.add(reading("single", TiltFace.ONE, 0.37));
    readings.add(reading("turned", TiltFace.TWO, -0.23));
    AdjustedTilts tilts = new TiltSession(readings).adjust();
    assertEquals(10, tilts.targets().size());
    assertEquals(0.30, Math.toDegrees(tilts.tilt("single").value()), 1e-3);
    assertEquals(0.30, Math.toDegrees(tilts.tilt("turned").value()), 1e-3);
    assertTrue(tilts.tilt("single").standardUncertainty() < 1.05 * U);
    assertEquals(0.07, Math.toDegrees(tilts.zeroError(ZERO).value()), 1e-3);
    // a common zero left over lifts all readings of one face together: no slip is seen in it
    assertTrue(tilts.fit().suspectedSlip(0.05).isEmpty());
    assertTrue(tilts.linearisedTilt("single").correlationWith(tilts.linearisedTilt("turned")) < 0);
  }

  /** In any order, by other names, or with every lean seen from the other side of its column. */
  @Test
  void orderNamesAndTheSideOfTheColumnDoNotMatter() {
    List<TiltReading> readings =
        List.of(
            reading("a", TiltFace.ONE, 0.31),
            reading("a", TiltFace.TWO, -0.19),
            reading("b", TiltFace.ONE, 0.12),
            reading("c", TiltFace.TWO, 0.44),
            reading("c", TiltFace.ONE, -0.28));
    AdjustedTilts expected = new TiltSession(readings).adjust();
    List<TiltReading> other = new ArrayList<>();
    for (TiltReading one : readings) {
      TiltFace face = one.face() == TiltFace.ONE ? TiltFace.TWO : TiltFace.ONE;
      other.add(0, new TiltReading("column " + one.target(), face, one.observation()));
    }
    AdjustedTilts found = new TiltSession(other).adjust();
    for (String target : expected.targets()) {
      assertEquals(expected.tilt(target).value(), -found.tilt("column " + target).value(), 1e-15);
      assertEquals(
          expected.tilt(target).standardUncertainty(),
          found.tilt("column " + target).standardUncertainty(),
          1e-15);
    }
    assertEquals(expected.zeroError(ZERO).value(), found.zeroError(ZERO).value(), 1e-15);
  }

  @Test
  void oneMoreReadingRaisesNoUncertainty() {
    List<TiltReading> readings =
        List.of(
            reading("a", TiltFace.ONE, 0.31),
            reading("b", TiltFace.ONE, 0.12),
            reading("b", TiltFace.TWO, 0.02));
    AdjustedTilts before = new TiltSession(readings).adjust();
    for (String target : List.of("a", "b")) {
      for (TiltFace face : TiltFace.values()) {
        List<TiltReading> more = new ArrayList<>(readings);
        Observation like = reading(target, face, 0.2).observation();
        more.add(
            new TiltReading(
                target, face, new Observation("more", like.observed(), U, like.commonParts())));
        AdjustedTilts after = new TiltSession(more).adjust();
        for (String one : before.targets()) {
          assertTrue(
              after.tilt(one).standardUncertainty()
                  <= before.tilt(one).standardUncertainty() * (1 + 1e-12));
        }
      }
    }
  }

  @Test
  void aSessionMayBeEmpty() {
    assertEquals(List.of(), new TiltSession(List.of()).adjust().targets());
  }

  @Test
  void refusesWhatIsNoSession() {
    TiltReading one = reading("a", TiltFace.ONE, 0.1);
    assertThrows(IllegalArgumentException.class, () -> new TiltSession(List.of(one, one)));
    assertThrows(
        IllegalArgumentException.class, () -> reading("a", TiltFace.ONE, Double.POSITIVE_INFINITY));
    AdjustedTilts tilts = new TiltSession(List.of(one)).adjust();
    assertThrows(IllegalArgumentException.class, () -> tilts.tilt("z"));
    assertThrows(IllegalArgumentException.class, () -> tilts.zeroError("z"));
  }
}
