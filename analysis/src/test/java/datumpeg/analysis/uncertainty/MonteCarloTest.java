package datumpeg.analysis.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.analysis.simulate.NormalDraws;
import datumpeg.analysis.stat.Normal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Test;

/**
 * The reductions that are not linear, by both routes. With 200,000 draws a mean is known to u/447
 * and a standard deviation to u/632; bounds are four of those unless another is named.
 */
final class MonteCarloTest {
  private static final double OF_MEAN = 4 / Math.sqrt(MonteCarlo.TRIALS);
  private static final double OF_DEVIATION = 4 / Math.sqrt(2.0 * MonteCarlo.TRIALS);

  private static double rectangular(NormalDraws draws, double standardDeviation) {
    return standardDeviation * Math.sqrt(3) * (2 * Normal.cdf(draws.next()) - 1);
  }

  private static void assertAgree(Estimate firstOrder, MonteCarlo drawn) {
    double u = firstOrder.standardUncertainty();
    assertEquals(firstOrder.value(), drawn.mean(), OF_MEAN * u);
    assertEquals(u, drawn.standardDeviation(), OF_DEVIATION * u);
    assertEquals(0.9545, drawn.within(firstOrder), 0.003);
  }

  /** JCGM 101:2008, 9.2.2 and 9.2.3 (recalled): sums of four, normal ±3.92, rectangular ±3.88. */
  @Test
  void drawingGivesTheIntervalsOfTheSupplement() {
    MonteCarlo normal = MonteCarlo.of(1, d -> d.next() + d.next() + d.next() + d.next());
    assertEquals(2.00, normal.standardDeviation(), OF_DEVIATION * 2);
    assertEquals(3.92, normal.quantile(0.975), 0.04);
    assertEquals(-3.92, normal.quantile(0.025), 0.04);
    MonteCarlo flat =
        MonteCarlo.of(
            2, d -> rectangular(d, 1) + rectangular(d, 1) + rectangular(d, 1) + rectangular(d, 1));
    assertEquals(2.00, flat.standardDeviation(), OF_DEVIATION * 2);
    assertEquals(3.88, flat.quantile(0.975), 0.03);
    assertEquals(-3.88, flat.quantile(0.025), 0.03);
  }

  /** H · tan θ with θ from two faces, each reading 0.05 deg at k = 2, over 4.2 m. */
  @Test
  void leanOfAColumnFromTwoFaces() {
    double u = StrictMath.toRadians(0.025);
    double one = StrictMath.toRadians(0.32);
    double two = StrictMath.toRadians(-0.18);
    Map<String, Estimate> faces = new LinkedHashMap<>();
    faces.put("face 1", new Estimate(one, u));
    faces.put("face 2", new Estimate(two, u));
    JointEstimate joint = JointEstimate.independent(faces);
    Estimate lean =
        joint
            .quantity("face 1")
            .minus(joint.quantity("face 2"))
            .scaled(0.5)
            .tangent()
            .scaled(4.2)
            .estimate();
    assertEquals(0.018326, lean.value(), 5e-7);
    assertAgree(
        lean, MonteCarlo.of(3, d -> 4.2 * StrictMath.tan((one + d.next(u) - two - d.next(u)) / 2)));
  }

  /** Even at 5 degrees, which no column survives, the tangent's bend adds nothing that shows. */
  @Test
  void leanOfAColumnFarOffPlumb() {
    double u = StrictMath.toRadians(0.1);
    double tilt = StrictMath.toRadians(5);
    JointEstimate joint = JointEstimate.independent(Map.of("tilt", new Estimate(tilt, u)));
    assertAgree(
        joint.quantity("tilt").tangent().scaled(3.6).estimate(),
        MonteCarlo.of(4, d -> 3.6 * StrictMath.tan(tilt + d.next(u))));
  }

  /**
   * A corner's angle and the offset over its 9 m side from three points on a 12 m by 9 m slab, 2 mm
   * each way, the two coordinates of a point correlated by 0.6.
   */
  @Test
  void squarenessOfACornerFromItsPoints() {
    List<String> names = List.of("xA", "yA", "xB", "yB", "xD", "yD");
    double[] places = {0, 0, 12.002, 0.001, 0.014, 9.003};
    double u = 0.002;
    double correlation = 0.6;
    double[][] covariance = new double[6][6];
    for (int i = 0; i < 6; i++) {
      covariance[i][i] = u * u;
      covariance[i][i ^ 1] = correlation * u * u;
    }
    JointEstimate joint = JointEstimate.of(names, places, covariance);
    Linearised toB = direction(joint, "B");
    Linearised toD = direction(joint, "D");
    Estimate offset = toD.minus(toB).shifted(-StrictMath.PI / 2).tangent().scaled(9).estimate();
    double rest = Math.sqrt(1 - correlation * correlation);
    assertAgree(
        offset,
        MonteCarlo.of(
            5,
            d -> {
              double[] p = places.clone();
              for (int i = 0; i < 6; i += 2) {
                double x = d.next(u);
                p[i] += x;
                p[i + 1] += correlation * x + rest * d.next(u);
              }
              double angle =
                  StrictMath.atan2(p[5] - p[1], p[4] - p[0])
                      - StrictMath.atan2(p[3] - p[1], p[2] - p[0]);
              return 9 * StrictMath.tan(angle - StrictMath.PI / 2);
            }));
  }

  private static Linearised direction(JointEstimate joint, String to) {
    return Linearised.direction(
        joint.quantity("y" + to).minus(joint.quantity("yA")),
        joint.quantity("x" + to).minus(joint.quantity("xA")));
  }

  /**
   * JCGM 100:2008, H.1: the first order gives 31.66 nm and leaves out products of errors; with
   * these, 11.73 and 1.67 nm, it is 33.81 nm (H.1.7: 34 nm). Drawing finds the latter.
   */
  @Test
  void endGaugeOfTheGuideHasTermsOfSecondOrder() {
    double difference = Estimate.combine(5.8, 3.9, 6.7);
    MonteCarlo drawn =
        MonteCarlo.of(
            6,
            d -> {
              double standard = 50_000_623 + d.next(25);
              double temperature = -0.1 + d.next(0.2) + arcsine(d, 0.5);
              double expansion = 11.5e-6 + rectangular(d, 2e-6 / Math.sqrt(3));
              double correction =
                  rectangular(d, 1e-6 / Math.sqrt(3)) * temperature
                      + expansion * rectangular(d, 0.05 / Math.sqrt(3));
              return standard + 215 + d.next(difference) - standard * correction;
            });
    assertEquals(50_000_838, drawn.mean(), OF_MEAN * 34);
    assertEquals(33.81, drawn.standardDeviation(), 2 * OF_DEVIATION * 34);
    assertEquals(33.81, Estimate.combine(31.66, 11.726, 1.667), 0.01);
  }

  /** A cyclic temperature: half-width · sin of an even phase, standard deviation half-width/√2. */
  private static double arcsine(NormalDraws draws, double halfWidth) {
    return halfWidth * StrictMath.sin(StrictMath.PI * (2 * Normal.cdf(draws.next()) - 1));
  }

  /**
   * The standard deviations of an evenly, a triangularly and a cyclically distributed error within
   * ±a: a/√3, a/√6 and a/√2 (JCGM 100:2008, 4.3.7, 4.3.9 and H.1.3.4).
   */
  @Test
  void halfWidthsBecomeStandardUncertainties() {
    SplittableRandom random = new SplittableRandom(7);
    DoubleSupplier even = () -> 2 * random.nextDouble() - 1;
    assertDeviation(1 / Math.sqrt(3), even);
    assertDeviation(1 / Math.sqrt(6), () -> (even.getAsDouble() + even.getAsDouble()) / 2);
    assertDeviation(1 / Math.sqrt(2), () -> StrictMath.sin(StrictMath.PI * even.getAsDouble()));
  }

  private static void assertDeviation(double expected, DoubleSupplier error) {
    MonteCarlo drawn = MonteCarlo.of(0, d -> error.getAsDouble());
    assertEquals(expected, drawn.standardDeviation(), OF_DEVIATION * expected);
  }
}
