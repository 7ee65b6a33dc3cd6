package datumpeg.analysis.simulate;

import static datumpeg.analysis.measuring.MeasuredQuantity.ATTRIBUTE;
import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static datumpeg.analysis.measuring.MeasuredQuantity.HEIGHT;
import static datumpeg.analysis.measuring.MeasuredQuantity.STAFF;
import static datumpeg.analysis.measuring.MeasuredQuantity.TILT;
import static datumpeg.analysis.simulate.ExamplePlan.mark;
import static datumpeg.analysis.simulate.ExamplePlan.point;
import static datumpeg.analysis.simulate.ExamplePlan.target;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import datumpeg.analysis.building.Position;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.measuring.Reading;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.hipparchus.stat.descriptive.StreamingStatistics;
import org.junit.jupiter.api.Test;

class SimulatedSessionTest {
  private static final Instant START = Instant.parse("2026-03-02T07:00:00Z");
  private static final int SEEDS = 4000;

  private final SimulatedSite site =
      SimulatedSite.asDesigned(ExamplePlan.setOut())
          .withShift(point("slab.A4"), new Position(0, 0, 0.006))
          .withColumn(mark("A3"), SimulatedColumn.leaning(0, 0.021));
  private final Sighting side = Sighting.of(target(DISTANCE, "slab.A1-slab.A4"), "laser");
  private final Sighting lean = Sighting.of(target(TILT, "column.A3/across"), "tilt");

  private SimulatedSession session(SimulatedCrew crew, Map<String, SimulatedMeter> meters) {
    return new SimulatedSession(site, crew, meters, "s1", "arrival", START);
  }

  private static SimulatedMeter meter(double repeatability, double resolution, double common) {
    return new SimulatedMeter(repeatability, resolution, common, 0, LevelPlane.TRUE);
  }

  @Test
  void perfectMetersInPerfectHandsReadTheTruth() {
    SimulatedSession session =
        session(
            SimulatedCrew.EXACT,
            Map.of("laser", SimulatedMeter.PERFECT, "tilt", SimulatedMeter.PERFECT));
    List<Reading> readings = session.read(List.of(side, lean), 1);
    assertEquals(session.trueValue(side), readings.get(0).valueSi());
    assertEquals(0.334222, StrictMath.toDegrees(readings.get(1).valueSi()), 1e-6); // atan(21/3600)
    assertEquals(START.plusSeconds(40), readings.get(1).at());
    assertEquals("s1-2", readings.get(1).id());
  }

  @Test
  void theSameSeedGivesTheSameReadingsAndAnotherSeedOthers() {
    SimulatedSession session =
        session(new SimulatedCrew(Map.of("slab", 0.001)), Map.of("laser", meter(0.0005, 0, 0)));
    List<Sighting> twice = List.of(side, side);
    assertEquals(session.read(twice, 5), session.read(twice, 5));
    assertNotEquals(session.read(twice, 5), session.read(twice, 6));
    assertNotEquals(
        session.read(twice, 5).get(0).valueSi(), session.read(twice, 5).get(1).valueSi());
  }

  /**
   * The independent variance of one reading: repeatability² + resolution²/12 + both points'
   * definitions². The bounds are four standard errors of mean and standard deviation of 4000 draws.
   */
  @Test
  void theNoiseOfADistanceHasTheStatedMeanAndStandardDeviation() {
    SimulatedSession session =
        session(
            new SimulatedCrew(Map.of("slab", 0.001)), Map.of("laser", meter(0.00053, 0.001, 0)));
    double expected =
        StrictMath.sqrt(0.00053 * 0.00053 + 1e-6 / 12 + 2 * 1e-6); // 1.5383 mm, see room measuring
    StreamingStatistics errors = new StreamingStatistics();
    IntStream.range(0, SEEDS)
        .forEach(seed -> errors.addValue(session.read(List.of(side), seed).get(0).valueSi() - 18));
    assertEquals(0, errors.getMean(), 4 * expected / StrictMath.sqrt(SEEDS));
    assertEquals(
        expected, errors.getStandardDeviation(), 4 * expected / StrictMath.sqrt(2.0 * SEEDS));
  }

  /**
   * 2 mm beside A4 toward the far end: every reading of that corner is 2 mm long, none scatters.
   * The 7 mm that the mark lies high add 1.4 µm.
   */
  @Test
  void aCrewThatMarksItsPointsIsBesideThemOnceForAllReadings() {
    SimulatedCrew crew =
        new SimulatedCrew(Map.of(), Map.of(point("slab.A4"), new Position(0.002, 0, 0.001)));
    SimulatedSession session =
        session(crew, Map.of("laser", SimulatedMeter.PERFECT, "level", SimulatedMeter.PERFECT));
    Sighting height = Sighting.of(target(HEIGHT, "slab.A4"), "level");
    List<Reading> readings = session.read(List.of(side, side, height), 1);
    assertEquals(18.0020014, readings.get(0).valueSi(), 1e-7);
    assertEquals(readings.get(0).valueSi(), readings.get(1).valueSi());
    assertEquals(0.007, readings.get(2).valueSi(), 1e-12);
    assertEquals(18, session.trueValue(side), 2e-6);
  }

  @Test
  void theMarksOfManyCrewsScatterByTheStatedDefinition() {
    StreamingStatistics x = new StreamingStatistics();
    for (int seed = 0; seed < SEEDS; seed++) {
      SimulatedCrew crew =
          SimulatedCrew.marking(
              Map.of("slab", 0.001),
              List.of(point("slab.A1"), point("base.A1")),
              new NormalDraws(seed));
      x.addValue(crew.marks().getOrDefault(point("slab.A1"), new Position(9, 9, 9)).xMetres());
      Position base = crew.marks().getOrDefault(point("base.A1"), new Position(9, 9, 9));
      assertEquals(0, base.distanceMetres(new Position(0, 0, 0)));
    }
    assertEquals(0, x.getMean(), 4 * 0.001 / StrictMath.sqrt(SEEDS));
    assertEquals(0.001, x.getStandardDeviation(), 4 * 0.001 / StrictMath.sqrt(2.0 * SEEDS));
  }

  @Test
  void theCommonErrorOfADrawnMeterIsSharedBySessionAndSpreadOverSessions() {
    MeterAccuracy accuracy = new MeterAccuracy(0, 0.0006, 0.00002, 0);
    StreamingStatistics errors = new StreamingStatistics();
    for (int seed = 0; seed < SEEDS; seed++) {
      SimulatedMeter drawn = SimulatedMeter.draw(accuracy, new NormalDraws(seed));
      List<Reading> readings =
          session(SimulatedCrew.EXACT, Map.of("laser", drawn)).read(List.of(side, side), seed);
      assertEquals(readings.get(0).valueSi(), readings.get(1).valueSi());
      errors.addValue(readings.get(0).valueSi() - 18);
    }
    double expected = StrictMath.sqrt(0.0006 * 0.0006 + 0.00036 * 0.00036); // 20 µm/m over 18 m
    assertEquals(0, errors.getMean(), 4 * expected / StrictMath.sqrt(SEEDS));
    assertEquals(
        expected, errors.getStandardDeviation(), 4 * expected / StrictMath.sqrt(2.0 * SEEDS));
  }

  /**
   * r1 = θ + zero, r2 = −θ + zero: the published reversal r1 = +0.32, r2 = −0.18 gives 0.25, 0.07.
   */
  @Test
  void theTwoFacesOfATiltShowTheZeroErrorOnce() {
    SimulatedSite quarter =
        site.withColumn(
            mark("B2"),
            SimulatedColumn.leaning(3.6 * StrictMath.tan(StrictMath.toRadians(0.25)), 0));
    Sighting tilt = Sighting.of(target(TILT, "column.B2/along"), "tilt");
    List<Reading> readings =
        new SimulatedSession(
                quarter,
                SimulatedCrew.EXACT,
                Map.of("tilt", meter(0, StrictMath.toRadians(0.01), StrictMath.toRadians(0.07))),
                "s1",
                "lift",
                START)
            .read(List.of(tilt.onFace(1), tilt.onFace(2)), 1);
    assertEquals(0.32, StrictMath.toDegrees(readings.get(0).valueSi()), 1e-9);
    assertEquals(-0.18, StrictMath.toDegrees(readings.get(1).valueSi()), 1e-9);
    assertEquals(2, readings.get(1).face());
  }

  /** A plane 1.5 m over A1 that rises 0.1 mm a metre along: over A4 it stands 1.5018 m. */
  @Test
  void aLevelReadsFromItsOwnPlaneUpAndAStaffDown() {
    SimulatedMeter level = new SimulatedMeter(0, 0, 0, 0, new LevelPlane(1.5, 0.0001, 0));
    SimulatedSession session = session(SimulatedCrew.EXACT, Map.of("level", level));
    List<Reading> readings =
        session.read(
            List.of(
                Sighting.of(target(HEIGHT, "slab.A4"), "level"),
                Sighting.of(target(STAFF, "slab.A4"), "level"),
                Sighting.of(target(STAFF, "slab.A1"), "level")),
            1);
    assertEquals(0.006 - 1.5018, readings.get(0).valueSi(), 1e-12);
    assertEquals(1.4958, readings.get(1).valueSi(), 1e-12);
    assertEquals(1.5, readings.get(2).valueSi(), 1e-12);
  }

  @Test
  void aDrawnLevelTiltsItsPlaneBothWays() {
    StreamingStatistics along = new StreamingStatistics();
    StreamingStatistics across = new StreamingStatistics();
    for (int seed = 0; seed < SEEDS; seed++) {
      LevelPlane plane =
          SimulatedMeter.drawLevel(new MeterAccuracy(0, 0, 0.0001, 0), 1.5, new NormalDraws(seed))
              .plane();
      along.addValue(plane.risePerMetreAlong());
      across.addValue(plane.risePerMetreAcross());
    }
    double bound = 4 * 0.0001 / StrictMath.sqrt(2.0 * SEEDS);
    assertEquals(0.0001, along.getStandardDeviation(), bound);
    assertEquals(0.0001, across.getStandardDeviation(), bound);
  }

  @Test
  void aSlipIsAddedToWhatTheMeterShows() {
    SimulatedSession session =
        session(SimulatedCrew.EXACT, Map.of("laser", meter(0.0005, 0.001, 0)));
    double clean = session.read(List.of(side), 9).get(0).valueSi();
    assertEquals(clean - 1, session.read(List.of(side.withSlip(-1)), 9).get(0).valueSi(), 1e-12);
  }

  @Test
  void aReadingIsAMultipleOfTheResolution() {
    SimulatedSession session =
        session(new SimulatedCrew(Map.of("slab", 0.002)), Map.of("laser", meter(0.001, 0.005, 0)));
    for (int seed = 0; seed < 50; seed++) {
      double steps = session.read(List.of(side), seed).get(0).valueSi() / 0.005;
      assertEquals(Math.rint(steps), steps, 1e-9);
    }
  }

  @Test
  void aTiltMeterNotAtMidHeightSeesTheBow() {
    SimulatedSite bowed = site.withColumn(mark("A1"), new SimulatedColumn(0, 0, 0.0036, 0));
    SimulatedSession session =
        new SimulatedSession(bowed, SimulatedCrew.EXACT, Map.of(), "s1", "lift", START);
    Sighting tilt = Sighting.of(target(TILT, "column.A1/along"), "tilt");
    assertEquals(0, session.trueValue(tilt), 1e-15);
    // slope 4 · 3.6/3600 · (1 − 2/3) at a third of the height
    assertEquals(0.004 / 3, StrictMath.tan(session.trueValue(tilt.at(1.2))), 1e-12);
  }

  @Test
  void anUnknownMeterAndAQuestionAreRefused() {
    SimulatedSession session = session(SimulatedCrew.EXACT, Map.of());
    IllegalArgumentException unknown =
        assertThrows(IllegalArgumentException.class, () -> session.read(List.of(side), 1));
    assertEquals(
        "The session s1 has no meter laser to read slab.A1-slab.A4; it has .",
        unknown.getMessage());
    Sighting question = Sighting.of(target(ATTRIBUTE, "edge-sound"), "laser");
    assertThrows(IllegalArgumentException.class, () -> session.trueValue(question));
  }

  @Test
  void nothingToReadGivesNoReadings() {
    assertEquals(List.of(), session(SimulatedCrew.EXACT, Map.of()).read(List.of(), 1));
  }

  @Test
  void errorsThatCannotBeAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> meter(-1, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> meter(0, 0, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> new SimulatedCrew(Map.of("slab", -0.001)));
  }
}
