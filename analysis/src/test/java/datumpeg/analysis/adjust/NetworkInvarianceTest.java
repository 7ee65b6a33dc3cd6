package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;

/**
 * What a wall frame lying on the slab and a row of frames come to does not hang on where the
 * drawing puts them, how they are turned, seen from which face, named, in which order they were
 * read, or in what unit; and one more reading that fits makes nothing less certain.
 */
final class NetworkInvarianceTest {
  private static final double SAME = 1e-9;

  /** Foot and eave corners of a wall frame, 18 m by 3.6 m; invented. */
  private static final List<PlanPoint> WALL =
      List.of(
          new PlanPoint("a", 0, 0),
          new PlanPoint("b", 18, 0),
          new PlanPoint("c", 18, 3.6),
          new PlanPoint("d", 0, 3.6));

  private static final List<String> ROW = List.of("f1", "f2", "f3", "f4", "f5");

  /** All six distances with drawn errors, read with one meter that has a zero and a scale. */
  private static List<MeasuredDistance> wall(long seed) {
    Random random = new Random(seed);
    List<MeasuredDistance> taken = new ArrayList<>();
    for (int i = 0; i < WALL.size(); i++) {
      for (int j = i + 1; j < WALL.size(); j++) {
        double length = WALL.get(i).distanceTo(WALL.get(j)) + 0.003 * random.nextGaussian();
        taken.add(
            new MeasuredDistance(
                WALL.get(i).name(), WALL.get(j).name(), observation("r" + i + j, length, 1)));
      }
    }
    return taken;
  }

  private static Observation observation(String id, double length, double unit) {
    return new Observation(
        id,
        unit * length,
        unit * 0.0015,
        List.of(
            new CommonPart("laser zero", unit * 0.0005),
            new CommonPart("laser scale", unit * 3e-5 * length)));
  }

  private static AdjustedPlan adjusted(List<PlanPoint> points, List<MeasuredDistance> taken) {
    return new DistanceNetwork(points.get(0).name(), points.get(1).name(), points, taken)
        .adjust()
        .complete()
        .orElseThrow();
  }

  private static void assertSame(Estimate expected, Estimate found, double unit) {
    assertEquals(expected.value(), found.value() / unit, SAME);
    assertEquals(expected.standardUncertainty(), found.standardUncertainty() / unit, SAME);
  }

  /** Every distance, every corner's angle without its sign, and the test of all together. */
  private static void assertSameShape(
      AdjustedPlan expected, AdjustedPlan found, UnaryOperator<String> name, double unit) {
    for (PlanPoint one : WALL) {
      for (PlanPoint other : WALL) {
        if (!one.equals(other)) {
          assertSame(
              expected.distance(one.name(), other.name()),
              found.distance(name.apply(one.name()), name.apply(other.name())),
              unit);
        }
      }
    }
    Estimate angle = expected.angle("a", "b", "d");
    Estimate again = found.angle(name.apply("a"), name.apply("b"), name.apply("d"));
    assertEquals(Math.min(angle.value(), 2 * Math.PI - angle.value()), shortWay(again), SAME);
    assertEquals(angle.standardUncertainty(), again.standardUncertainty(), SAME);
    assertEquals(squareSum(expected), squareSum(found), 1e-6 * (1 + squareSum(expected)));
  }

  private static double shortWay(Estimate angle) {
    return Math.min(angle.value(), 2 * Math.PI - angle.value());
  }

  private static double squareSum(AdjustedPlan plan) {
    return plan.fit().test().orElseThrow().squareSum();
  }

  @Property(tries = 40, seed = "7")
  void whereTheDrawingPutsAWallFrameDoesNotMatter(
      @ForAll @LongRange(min = 1, max = 100_000) long seed) {
    Random random = new Random(seed);
    double turn = 6 * random.nextDouble();
    double face = random.nextBoolean() ? 1 : -1;
    double right = 100 * random.nextGaussian();
    double up = 100 * random.nextGaussian();
    List<PlanPoint> elsewhere =
        WALL.stream()
            .map(
                p ->
                    new PlanPoint(
                        p.name(),
                        right + Math.cos(turn) * p.xMetres() - face * Math.sin(turn) * p.yMetres(),
                        up + Math.sin(turn) * p.xMetres() + face * Math.cos(turn) * p.yMetres()))
            .toList();
    assertSameShape(
        adjusted(WALL, wall(seed)), adjusted(elsewhere, wall(seed)), UnaryOperator.identity(), 1);
  }

  @Property(tries = 40, seed = "7")
  void namesAndOrderOfAWallFrameDoNotMatter(@ForAll @LongRange(min = 1, max = 100_000) long seed) {
    UnaryOperator<String> other = name -> "wall." + ('z' - name.charAt(0));
    List<PlanPoint> points = new ArrayList<>();
    WALL.forEach(p -> points.add(new PlanPoint(other.apply(p.name()), p.xMetres(), p.yMetres())));
    Collections.shuffle(points, new Random(seed));
    List<MeasuredDistance> taken = new ArrayList<>();
    wall(seed)
        .forEach(
            d ->
                taken.add(
                    new MeasuredDistance(
                        other.apply(d.to()), other.apply(d.from()), d.observation())));
    Collections.shuffle(taken, new Random(~seed));
    assertSameShape(adjusted(WALL, wall(seed)), adjusted(points, taken), other, 1);
  }

  @Property(tries = 20, seed = "7")
  void theUnitOfAWallFrameDoesNotMatter(@ForAll @LongRange(min = 1, max = 100_000) long seed) {
    double feet = 1 / 0.3048;
    List<PlanPoint> points =
        WALL.stream()
            .map(p -> new PlanPoint(p.name(), feet * p.xMetres(), feet * p.yMetres()))
            .toList();
    List<MeasuredDistance> taken =
        wall(seed).stream()
            .map(
                d ->
                    new MeasuredDistance(
                        d.from(),
                        d.to(),
                        observation(d.observation().id(), d.observation().observed(), feet)))
            .toList();
    assertSameShape(
        adjusted(WALL, wall(seed)), adjusted(points, taken), UnaryOperator.identity(), feet);
  }

  /** Bay by bay, running from the first frame, and two bays at once; sizes of the invented shed. */
  private static List<LineDifference> row(long seed, double unit) {
    Random random = new Random(seed);
    List<LineDifference> taken = new ArrayList<>();
    for (int i = 0; i < ROW.size(); i++) {
      for (int j = i + 1; j < ROW.size(); j++) {
        double length = 6 * (j - i) + 0.003 * random.nextGaussian();
        if (j - i <= 2 || i == 0) {
          taken.add(
              new LineDifference(ROW.get(i), ROW.get(j), observation("r" + i + j, length, unit)));
        }
      }
    }
    return taken;
  }

  private static void assertSameRow(
      AdjustedLine expected, AdjustedLine found, UnaryOperator<String> name, double unit) {
    for (String from : ROW) {
      for (String to : ROW) {
        assertSame(
            expected.difference(from, to),
            found.difference(name.apply(from), name.apply(to)),
            unit);
      }
    }
    double sum = expected.fit().test().orElseThrow().squareSum();
    assertEquals(sum, found.fit().test().orElseThrow().squareSum(), 1e-8 * (1 + sum));
  }

  @Property(tries = 40, seed = "7")
  void namesOrderDirectionAndZeroOfARowDoNotMatter(
      @ForAll @LongRange(min = 1, max = 100_000) long seed) {
    UnaryOperator<String> other = name -> "base." + ('9' - name.charAt(1));
    List<String> stations = new ArrayList<>(ROW.stream().map(other).toList());
    Collections.shuffle(stations, new Random(seed));
    List<LineDifference> taken = new ArrayList<>();
    for (LineDifference d : row(seed, 1)) {
      taken.add(
          new LineDifference(
              other.apply(d.to()), other.apply(d.from()), negative(d.observation())));
    }
    Collections.shuffle(taken, new Random(~seed));
    assertSameRow(
        new LineNetwork(ROW, row(seed, 1)).adjust(),
        new LineNetwork(stations, taken).adjust(),
        other,
        1);
  }

  /** Read from the other end: what a meter adds it then takes away. */
  private static Observation negative(Observation read) {
    return new Observation(
        read.id(),
        -read.observed(),
        read.independentStandardUncertainty(),
        read.commonParts().stream().map(p -> new CommonPart(p.group(), -p.effect())).toList());
  }

  @Property(tries = 20, seed = "7")
  void theUnitOfARowDoesNotMatter(@ForAll @LongRange(min = 1, max = 100_000) long seed) {
    double feet = 1 / 0.3048;
    assertSameRow(
        new LineNetwork(ROW, row(seed, 1)).adjust(),
        new LineNetwork(ROW, row(seed, feet)).adjust(),
        UnaryOperator.identity(),
        feet);
  }

  @Property(tries = 40, seed = "7")
  void oneMoreReadingOfARowRaisesNoUncertainty(
      @ForAll @LongRange(min = 1, max = 100_000) long seed) {
    Random random = new Random(seed);
    int i = random.nextInt(ROW.size() - 1);
    int j = i + 1 + random.nextInt(ROW.size() - 1 - i);
    List<LineDifference> more = new ArrayList<>(row(seed, 1));
    more.add(
        new LineDifference(
            ROW.get(i),
            ROW.get(j),
            new Observation(
                "again",
                6 * (j - i),
                0.0002 + 0.005 * random.nextDouble(),
                List.of(new CommonPart("laser zero", 0.002 * random.nextGaussian())))));
    AdjustedLine before = new LineNetwork(ROW, row(seed, 1)).adjust();
    AdjustedLine after = new LineNetwork(ROW, more).adjust();
    for (String from : ROW) {
      for (String to : ROW) {
        assertTrue(
            after.difference(from, to).standardUncertainty()
                <= before.difference(from, to).standardUncertainty() * (1 + 1e-9) + 1e-15,
            from + " to " + to);
      }
    }
  }
}
