package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;
import org.junit.jupiter.api.Test;

/**
 * The same networks through the Levenberg-Marquardt optimiser of Hipparchus, differencing for
 * slopes.
 */
final class DistanceNetworkSecondRouteTest {
  /** An L-shaped slab with a re-entrant corner at E; dimensions invented. */
  private static final double[][] L_SHAPE = {{0, 0}, {18, 0}, {18, 6}, {9, 6}, {9, 12}, {0, 12}};

  private static List<PlanPoint> points(double[][] places) {
    List<PlanPoint> points = new ArrayList<>();
    for (int i = 0; i < places.length; i++) {
      points.add(new PlanPoint(String.valueOf((char) ('A' + i)), places[i][0], places[i][1]));
    }
    return points;
  }

  /**
   * Distances of a figure that missed its drawing by up to 40 mm, with noise and a shared error.
   */
  private static List<MeasuredDistance> measured(SplittableRandom random, double leaveOut) {
    double[][] truth = new double[L_SHAPE.length][2];
    for (int i = 0; i < truth.length; i++) {
      truth[i][0] = L_SHAPE[i][0] + random.nextDouble(-0.04, 0.04);
      truth[i][1] = L_SHAPE[i][1] + random.nextDouble(-0.04, 0.04);
    }
    double zero = random.nextGaussian();
    List<MeasuredDistance> taken = new ArrayList<>();
    for (int i = 0; i < truth.length; i++) {
      for (int j = i + 1; j < truth.length; j++) {
        if (j != i + 1 && random.nextDouble() < leaveOut) {
          continue;
        }
        double length = Math.hypot(truth[j][0] - truth[i][0], truth[j][1] - truth[i][1]);
        double own = random.nextDouble(0.0005, 0.002);
        taken.add(
            new MeasuredDistance(
                String.valueOf((char) ('A' + i)),
                String.valueOf((char) ('A' + j)),
                new Observation(
                    "d" + i + j,
                    length + own * random.nextGaussian() + 0.0008 * zero,
                    own,
                    List.of(
                        new CommonPart("laser|1 zero", 0.0008),
                        new CommonPart("laser|1 scale", 1e-4 * length)))));
      }
    }
    return taken;
  }

  @Test
  void agreesOnRandomLShapedSlabs() {
    SplittableRandom random = new SplittableRandom(77);
    int adjusted = 0;
    for (int run = 0; run < 25; run++) {
      List<MeasuredDistance> taken = measured(random, run % 2 == 0 ? 0 : 0.25);
      Adjustment<AdjustedPlan> result =
          new DistanceNetwork("A", "B", points(L_SHAPE), taken).adjust();
      if (result.complete().isPresent()) {
        assertAgrees(result.complete().get(), taken);
        adjusted++;
      }
    }
    assertTrue(adjusted >= 20, adjusted + " networks were determined");
  }

  private static void assertAgrees(AdjustedPlan plan, List<MeasuredDistance> taken) {
    Optimum optimum = optimum(taken);
    double[] found = optimum.getPoint().toArray();
    RealMatrix covariance = optimum.getCovariances(1e-14);
    for (String name : List.of("C", "D", "E", "F")) {
      int x = 2 * (name.charAt(0) - 'A') - 3;
      AdjustedPoint point = plan.point(name);
      assertEquals(found[x], point.xMetres(), 1e-7);
      assertEquals(found[x + 1], point.yMetres(), 1e-7);
      assertEquals(Math.sqrt(covariance.getEntry(x, x)), point.xStandardUncertaintyMetres(), 1e-7);
      assertEquals(covariance.getEntry(x, x + 1), point.covarianceSquareMetres(), 1e-9);
    }
    plan.fit()
        .test()
        .ifPresent(
            test -> assertEquals(optimum.getCost() * optimum.getCost(), test.squareSum(), 1e-6));
  }

  private static Optimum optimum(List<MeasuredDistance> taken) {
    double[] start = new double[9];
    start[0] = 18;
    for (int i = 2; i < 6; i++) {
      start[2 * i - 3] = L_SHAPE[i][0];
      start[2 * i - 2] = L_SHAPE[i][1];
    }
    return new LevenbergMarquardtOptimizer()
        .withCostRelativeTolerance(1e-14)
        .withParameterRelativeTolerance(1e-14)
        .optimize(
            new LeastSquaresBuilder()
                .start(start)
                .model(vector -> evaluated(vector, taken))
                .target(taken.stream().mapToDouble(d -> d.observation().observed()).toArray())
                .weight(symmetric(MatrixUtils.inverse(covariance(taken))))
                .maxEvaluations(500)
                .maxIterations(500)
                .build());
  }

  /** The optimiser refuses a weight matrix that rounding made unsymmetric. */
  private static RealMatrix symmetric(RealMatrix matrix) {
    return matrix.add(matrix.transpose()).scalarMultiply(0.5);
  }

  private static RealMatrix covariance(List<MeasuredDistance> taken) {
    RealMatrix covariance = MatrixUtils.createRealMatrix(taken.size(), taken.size());
    for (int i = 0; i < taken.size(); i++) {
      for (int j = 0; j < taken.size(); j++) {
        Observation one = taken.get(i).observation();
        Observation other = taken.get(j).observation();
        double own = i == j ? one.independentStandardUncertainty() : 0;
        covariance.setEntry(
            i,
            j,
            own * own
                + one.commonParts().get(0).effect() * other.commonParts().get(0).effect()
                + one.commonParts().get(1).effect() * other.commonParts().get(1).effect());
      }
    }
    return covariance;
  }

  private static Pair<RealVector, RealMatrix> evaluated(
      RealVector unknowns, List<MeasuredDistance> taken) {
    double h = 1e-5;
    RealMatrix slopes = MatrixUtils.createRealMatrix(taken.size(), unknowns.getDimension());
    for (int j = 0; j < unknowns.getDimension(); j++) {
      RealVector up = unknowns.copy();
      RealVector down = unknowns.copy();
      up.addToEntry(j, h);
      down.addToEntry(j, -h);
      slopes.setColumnVector(
          j, distances(up, taken).subtract(distances(down, taken)).mapDivide(2 * h));
    }
    return new Pair<>(distances(unknowns, taken), slopes);
  }

  private static RealVector distances(RealVector unknowns, List<MeasuredDistance> taken) {
    return new ArrayRealVector(
        taken.stream()
            .mapToDouble(
                d ->
                    Math.hypot(
                        coordinate(unknowns, d.to(), 0) - coordinate(unknowns, d.from(), 0),
                        coordinate(unknowns, d.to(), 1) - coordinate(unknowns, d.from(), 1)))
            .toArray());
  }

  private static double coordinate(RealVector unknowns, String name, int axis) {
    int position = 2 * (name.charAt(0) - 'A') - 3 + axis;
    return name.equals("A") || (name.equals("B") && axis == 1)
        ? 0
        : unknowns.getEntry(name.equals("B") ? 0 : position);
  }

  @Test
  void analyticSlopesAreThoseOfFiniteDifferences() {
    PlanState state = PlanState.inDatum("A", "B", points(L_SHAPE));
    double h = 1e-6;
    for (String from : state.names()) {
      for (String to : state.names()) {
        if (!from.equals(to)) {
          double[] gradient = state.gradient(from, to);
          for (int i = 0; i < gradient.length; i++) {
            double[] step = new double[gradient.length];
            step[i] = h;
            double slope =
                (state.moved(step, 1).distance(from, to) - state.moved(step, -1).distance(from, to))
                    / (2 * h);
            assertEquals(slope, gradient[i], 1e-8);
          }
        }
      }
    }
  }

  /** Propagated uncertainties against the scatter of many simulated surveys of one slab. */
  @Test
  void statedUncertaintiesAreTheScatterOfSimulatedSurveys() {
    SplittableRandom random = new SplittableRandom(78);
    int runs = 1500;
    double[] angles = new double[runs];
    double[] differences = new double[runs];
    Estimate angle = Estimate.exact(0);
    Estimate difference = Estimate.exact(0);
    List<PlanPoint> corners = Quadrilateral.CORNERS;
    for (int run = 0; run < runs; run++) {
      double zero = 0.001 * random.nextGaussian();
      List<MeasuredDistance> taken = new ArrayList<>();
      for (int i = 0; i < 4; i++) {
        for (int j = i + 1; j < 4; j++) {
          double error = zero + 0.0015 * random.nextGaussian();
          taken.add(
              new MeasuredDistance(
                  corners.get(i).name(),
                  corners.get(j).name(),
                  new Observation(
                      "d" + i + j,
                      corners.get(i).distanceTo(corners.get(j)) + error,
                      0.0015,
                      List.of(new CommonPart("laser|1 zero", 0.001)))));
        }
      }
      AdjustedPlan plan =
          new DistanceNetwork("A", "B", corners, taken).adjust().complete().orElseThrow();
      angle = plan.angle("A", "B", "D");
      angles[run] = angle.value();
      difference =
          plan.linearisedDistance("A", "C").minus(plan.linearisedDistance("B", "D")).estimate();
      differences[run] = difference.value();
    }
    assertEquals(1, scatter(angles) / angle.standardUncertainty(), 4 / Math.sqrt(2.0 * runs));
    assertEquals(
        1, scatter(differences) / difference.standardUncertainty(), 4 / Math.sqrt(2.0 * runs));
  }

  private static double scatter(double[] values) {
    double mean = 0;
    for (double value : values) {
      mean += value / values.length;
    }
    double square = 0;
    for (double value : values) {
      square += (value - mean) * (value - mean);
    }
    return Math.sqrt(square / (values.length - 1));
  }
}
