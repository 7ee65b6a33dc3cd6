package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.simulate.NormalDraws;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/**
 * Random levellings from two or three set-ups, each with two tilts: beside the same model written
 * out with every tilt an unknown observed to be 0, solved by Hipparchus; and what must not matter.
 */
class LevelNetworkSecondRouteTest {
  private static final int SEEDS = 25;
  private static final double OWN = 0.0007;

  private record Levelling(
      List<PlanPoint> points, List<LevelSetUp> setUps, List<LevelReading> readings) {
    AdjustedLevels adjusted() {
      return new LevelNetwork(points, setUps, readings).adjust().complete().orElseThrow();
    }
  }

  /** An L-shaped field of points; every set-up reads three points and some of the others. */
  private static Levelling levelling(long seed, boolean alike) {
    SplittableRandom random = new SplittableRandom(seed);
    NormalDraws draws = new NormalDraws(seed);
    List<PlanPoint> points = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      points.add(
          new PlanPoint(
              "P" + i, 4 * (i % 5) + random.nextDouble(), 5 * (i / 5) + random.nextDouble()));
    }
    List<LevelSetUp> setUps = new ArrayList<>();
    List<LevelReading> readings = new ArrayList<>();
    for (int s = 0; s < 2 + seed % 2; s++) {
      String id = "S" + s;
      double tiltX = 1e-5 * (1 + random.nextInt(9));
      setUps.add(new LevelSetUp(id, tiltX, alike ? tiltX : 1e-5 * (1 + random.nextInt(9))));
      for (int i = 0; i < 8; i++) {
        if (i < 3 || s == 0 || random.nextBoolean()) {
          double value = 0.001 * i + 0.1 * s + draws.next(0.001);
          readings.add(
              new LevelReading(id, "P" + i, Observation.independent(id + " P" + i, value, OWN)));
        }
      }
    }
    return new Levelling(points, setUps, readings);
  }

  /** Levels of all points less that of the first, then their covariance. */
  private static final class WrittenOut {
    private final Levelling of;
    private final RealVector solution;
    private final RealMatrix covariance;
    private final int points;

    WrittenOut(Levelling of) {
      this.of = of;
      this.points = of.points().size();
      int unknowns = points - 1 + 3 * of.setUps().size();
      int rows = of.readings().size() + 2 * of.setUps().size();
      RealMatrix design = new Array2DRowRealMatrix(rows, unknowns);
      RealVector observed = new ArrayRealVector(rows);
      int row = 0;
      for (LevelReading reading : of.readings()) {
        fill(design, row, reading);
        observed.setEntry(row, reading.observation().observed() / OWN);
        row++;
      }
      for (int tilt = 0; tilt < 2 * of.setUps().size(); tilt++) {
        design.setEntry(row++, points - 1 + of.setUps().size() + tilt, 1);
      }
      RealMatrix normal = design.transposeMultiply(design);
      this.covariance = new LUDecomposition(normal).getSolver().getInverse();
      this.solution = covariance.operate(design.preMultiply(observed));
    }

    private void fill(RealMatrix design, int row, LevelReading reading) {
      int point = index(reading.point());
      int setUp = setUp(reading.setUp());
      if (point > 0) {
        design.setEntry(row, point - 1, 1 / OWN);
      }
      design.setEntry(row, points - 1 + setUp, 1 / OWN);
      LevelSetUp with = of.setUps().get(setUp);
      int tilts = points - 1 + of.setUps().size() + 2 * setUp;
      PlanPoint at = of.points().get(point);
      design.setEntry(row, tilts, with.tiltXStandardUncertaintyRadians() * at.xMetres() / OWN);
      design.setEntry(row, tilts + 1, with.tiltYStandardUncertaintyRadians() * at.yMetres() / OWN);
    }

    private int index(String point) {
      return Integer.parseInt(point.substring(1));
    }

    private int setUp(String id) {
      return Integer.parseInt(id.substring(1));
    }

    double difference(int point) {
      return solution.getEntry(point - 1);
    }

    double standardUncertainty(int point) {
      return Math.sqrt(covariance.getEntry(point - 1, point - 1));
    }
  }

  /** About which point a set-up's tilts are reckoned only moves its height, which is free. */
  @Test
  void agreesWithTheModelWrittenOut() {
    for (long seed = 1; seed <= SEEDS; seed++) {
      Levelling levelling = levelling(seed, false);
      AdjustedLevels levels = levelling.adjusted();
      WrittenOut other = new WrittenOut(levelling);
      for (int i = 1; i < 8; i++) {
        assertEquals(other.difference(i), levels.difference("P0", "P" + i).value(), 1e-9);
        assertEquals(
            other.standardUncertainty(i),
            levels.difference("P0", "P" + i).standardUncertainty(),
            1e-9);
      }
    }
  }

  private static void assertAlike(AdjustedLevels one, AdjustedLevels other) {
    for (String name : one.names()) {
      assertEquals(one.level(name).value(), other.level(name).value(), 1e-9);
      assertEquals(
          one.level(name).standardUncertainty(), other.level(name).standardUncertainty(), 1e-9);
    }
  }

  /** Shifted, turned about and mirrored in plan; tilts of one size each way know no direction. */
  @Test
  void whereTheDrawingLiesDoesNotMatter() {
    for (long seed = 1; seed <= SEEDS; seed++) {
      Levelling levelling = levelling(seed, true);
      double cosine = StrictMath.cos(0.7);
      double sine = StrictMath.sin(0.7);
      List<PlanPoint> moved =
          levelling.points().stream()
              .map(
                  p ->
                      new PlanPoint(
                          p.name(),
                          100 + cosine * p.xMetres() - sine * p.yMetres(),
                          -(30 + sine * p.xMetres() + cosine * p.yMetres())))
              .toList();
      assertAlike(
          levelling.adjusted(),
          new Levelling(moved, levelling.setUps(), levelling.readings()).adjusted());
    }
  }

  @Test
  void theOrderOfReadingsPointsAndSetUpsDoesNotMatter() {
    for (long seed = 1; seed <= SEEDS; seed++) {
      Levelling levelling = levelling(seed, false);
      List<PlanPoint> points = new ArrayList<>(levelling.points());
      List<LevelSetUp> setUps = new ArrayList<>(levelling.setUps());
      List<LevelReading> readings = new ArrayList<>(levelling.readings());
      Collections.shuffle(points, new Random(seed));
      Collections.shuffle(setUps, new Random(seed));
      Collections.shuffle(readings, new Random(seed));
      assertAlike(levelling.adjusted(), new Levelling(points, setUps, readings).adjusted());
    }
  }

  /** Other names for points and set-ups, and all lengths in feet. */
  @Test
  void namesAndTheUnitDoNotMatter() {
    double feet = 1 / 0.3048;
    for (long seed = 1; seed <= SEEDS; seed++) {
      Levelling levelling = levelling(seed, false);
      Levelling other =
          new Levelling(
              levelling.points().stream()
                  .map(
                      p -> new PlanPoint(renamed(p.name()), feet * p.xMetres(), feet * p.yMetres()))
                  .toList(),
              levelling.setUps().stream()
                  .map(
                      s ->
                          new LevelSetUp(
                              "at " + s.id(),
                              s.tiltXStandardUncertaintyRadians(),
                              s.tiltYStandardUncertaintyRadians()))
                  .toList(),
              levelling.readings().stream()
                  .map(
                      r ->
                          new LevelReading(
                              "at " + r.setUp(),
                              renamed(r.point()),
                              Observation.independent(
                                  "reading " + r.observation().id(),
                                  feet * r.observation().observed(),
                                  feet * OWN)))
                  .toList());
      AdjustedLevels levels = levelling.adjusted();
      AdjustedLevels others = other.adjusted();
      for (String name : levels.names()) {
        Estimate level = levels.level(name);
        Estimate again = others.level(renamed(name)).scaled(0.3048);
        assertEquals(level.value(), again.value(), 1e-9);
        assertEquals(level.standardUncertainty(), again.standardUncertainty(), 1e-9);
      }
      assertEquals(
          levels.fit().test().orElseThrow().squareSum(),
          others.fit().test().orElseThrow().squareSum(),
          1e-7);
    }
  }

  private static String renamed(String point) {
    return "corner " + (9 - Integer.parseInt(point.substring(1)));
  }

  /** Whatever it reads: the uncertainties depend on what was read, not on its value. */
  @Test
  void aFurtherReadingNeverRaisesAnUncertainty() {
    for (long seed = 1; seed <= SEEDS; seed++) {
      Levelling levelling = levelling(seed, false);
      AdjustedLevels before = levelling.adjusted();
      for (LevelReading taken : levelling.readings()) {
        List<LevelReading> more = new ArrayList<>(levelling.readings());
        more.add(
            new LevelReading(
                taken.setUp(),
                taken.point(),
                Observation.independent("more", taken.observation().observed(), OWN)));
        AdjustedLevels after =
            new Levelling(levelling.points(), levelling.setUps(), more).adjusted();
        for (int i = 1; i < 8; i++) {
          double then = after.difference("P0", "P" + i).standardUncertainty();
          assertTrue(
              then <= before.difference("P0", "P" + i).standardUncertainty() * (1 + 1e-9),
              "seed " + seed + ", P" + i + " after one more of " + taken.point());
        }
      }
    }
  }
}
