package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.stat.regression.GLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;

final class LeastSquaresTest {
  private static final String ZERO = "laser|1 zero";
  private static final String SCALE = "laser|1 scale";

  /** A random model of n observations of u unknowns with two shared errors. */
  private static LinearModel random(SplittableRandom random, int n, int u) {
    List<String> unknowns = new ArrayList<>();
    for (int j = 0; j < u; j++) {
      unknowns.add("x" + j);
    }
    List<ObservationEquation> equations = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Map<String, Double> coefficients = new LinkedHashMap<>();
      for (String unknown : unknowns) {
        coefficients.put(unknown, random.nextDouble(-1, 1));
      }
      List<CommonPart> parts =
          List.of(new CommonPart(ZERO, 0.7), new CommonPart(SCALE, random.nextDouble(0, 2)));
      equations.add(
          new ObservationEquation(
              new Observation("l" + i, random.nextDouble(-5, 5), random.nextDouble(0.5, 2), parts),
              coefficients,
              random.nextDouble(-1, 1)));
    }
    return new LinearModel(unknowns, equations);
  }

  private static Fit fit(LinearModel model) {
    return LeastSquares.adjust(model).complete().orElseThrow();
  }

  private static RealMatrix covariance(LinearModel model) {
    List<Observation> observations = model.observations();
    int n = observations.size();
    RealMatrix covariance = MatrixUtils.createRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double shared = 0;
        for (String group : List.of(ZERO, SCALE)) {
          shared += observations.get(i).effect(group) * observations.get(j).effect(group);
        }
        double own = observations.get(i).independentStandardUncertainty();
        covariance.setEntry(i, j, shared + (i == j ? own * own : 0));
      }
    }
    return covariance;
  }

  private static double[][] design(LinearModel model) {
    return model.equations().stream()
        .map(
            e ->
                model.unknowns().stream()
                    .mapToDouble(x -> e.coefficients().getOrDefault(x, 0.0))
                    .toArray())
        .toArray(double[][]::new);
  }

  private static double[] reduced(LinearModel model) {
    return model.equations().stream()
        .mapToDouble(e -> e.observation().observed() - e.constant())
        .toArray();
  }

  /** Second route: the generalised regression of Hipparchus, which inverts the covariance. */
  @Test
  void agreesWithAnotherLibrarysGeneralisedRegression() {
    SplittableRandom random = new SplittableRandom(11);
    for (int run = 0; run < 20; run++) {
      LinearModel model = random(random, 9, 3);
      Fit fit = fit(model);
      GLSMultipleLinearRegression other = new GLSMultipleLinearRegression();
      other.setNoIntercept(true);
      other.newSampleData(reduced(model), design(model), covariance(model).getData());
      double[] parameters = other.estimateRegressionParameters();
      double[] residuals = other.estimateResiduals();
      for (int j = 0; j < 3; j++) {
        assertEquals(parameters[j], fit.parameters().value("x" + j), 1e-10);
      }
      for (int i = 0; i < 9; i++) {
        assertEquals(-residuals[i], fit.observations().get(i).residual(), 1e-10);
      }
      RealMatrix a = MatrixUtils.createRealMatrix(design(model));
      RealMatrix weight = MatrixUtils.inverse(covariance(model));
      RealMatrix unknowns = MatrixUtils.inverse(a.transposeMultiply(weight.multiply(a)));
      assertEquals(unknowns.getEntry(0, 2), fit.parameters().covariance("x0", "x2"), 1e-10);
      RealMatrix v = MatrixUtils.createColumnRealMatrix(residuals);
      double squareSum = v.transposeMultiply(weight.multiply(v)).getEntry(0, 0);
      assertEquals(squareSum, fit.test().orElseThrow().squareSum(), 1e-9);
      assertEquals(squareSum / 6, fit.test().orElseThrow().varianceFactor(), 1e-10);
    }
  }

  @Test
  void redundanciesSumToTheDegreesOfFreedomAlsoWhenCorrelated() {
    SplittableRandom random = new SplittableRandom(12);
    for (int run = 0; run < 20; run++) {
      Fit fit = fit(random(random, 8, 3));
      double sum = fit.observations().stream().mapToDouble(AdjustedObservation::redundancy).sum();
      assertEquals(fit.degreesOfFreedom(), sum, 1e-10);
    }
  }

  /**
   * What the slip statistic and the estimated slip mean, by another route: give the observation an
   * unknown of its own; its estimate is the slip, and the square sum falls by the statistic
   * squared.
   */
  @Test
  void slipStatisticIsThatOfAnUnknownAddedForTheObservation() {
    SplittableRandom random = new SplittableRandom(13);
    LinearModel model = random(random, 8, 3);
    Fit fit = fit(model);
    for (int i = 0; i < 8; i++) {
      Fit shifted = fit(withOwnUnknown(model, i));
      AdjustedObservation one = fit.observations().get(i);
      Estimate slip = shifted.parameters().estimate("slip");
      assertEquals(slip.value(), one.estimatedSlip().orElseThrow(), 1e-9);
      double statistic = one.slipStatistic().orElseThrow();
      assertEquals(slip.value() / slip.standardUncertainty(), statistic, 1e-9);
      double fall = fit.test().orElseThrow().squareSum() - shifted.test().orElseThrow().squareSum();
      assertEquals(fall, statistic * statistic, 1e-9);
      assertEquals(
          2.801585 * slip.standardUncertainty(), one.smallestDetectableSlip().orElseThrow(), 1e-5);
    }
  }

  private static LinearModel withOwnUnknown(LinearModel model, int i) {
    List<String> unknowns = new ArrayList<>(model.unknowns());
    unknowns.add("slip");
    List<ObservationEquation> equations = new ArrayList<>(model.equations());
    ObservationEquation old = equations.get(i);
    Map<String, Double> coefficients = new LinkedHashMap<>(old.coefficients());
    coefficients.put("slip", 1.0);
    equations.set(i, new ObservationEquation(old.observation(), coefficients, old.constant()));
    return new LinearModel(unknowns, equations);
  }

  /** A shared error as an unknown of its own, observed to be 0 ± 1: the same adjustment. */
  @Test
  void aSharedErrorActsLikeAnUnknownObservedAsZero() {
    LinearModel model = random(new SplittableRandom(14), 9, 2);
    List<String> unknowns = new ArrayList<>(model.unknowns());
    unknowns.addAll(List.of(ZERO, SCALE));
    List<ObservationEquation> equations = new ArrayList<>();
    for (ObservationEquation old : model.equations()) {
      Map<String, Double> coefficients = new LinkedHashMap<>(old.coefficients());
      old.observation()
          .commonParts()
          .forEach(part -> coefficients.put(part.group(), part.effect()));
      Observation observation = old.observation();
      equations.add(
          new ObservationEquation(
              Observation.independent(
                  observation.id(),
                  observation.observed(),
                  observation.independentStandardUncertainty()),
              coefficients,
              old.constant()));
    }
    for (String group : List.of(ZERO, SCALE)) {
      equations.add(
          new ObservationEquation(Observation.independent(group, 0, 1), Map.of(group, 1.0), 0));
    }
    Fit direct = fit(model);
    Fit enlarged = fit(new LinearModel(unknowns, equations));
    assertClose(enlarged.parameters().estimate("x0"), direct.parameters().estimate("x0"));
    assertClose(enlarged.parameters().estimate("x1"), direct.parameters().estimate("x1"));
    assertClose(enlarged.parameters().estimate(ZERO), direct.commonEffect(ZERO));
    assertClose(enlarged.parameters().estimate(SCALE), direct.commonEffect(SCALE));
    assertEquals(
        enlarged.test().orElseThrow().squareSum(), direct.test().orElseThrow().squareSum(), 1e-9);
    assertThrows(IllegalArgumentException.class, () -> direct.commonEffect("tape"));
  }

  private static void assertClose(Estimate expected, Estimate actual) {
    assertEquals(expected.value(), actual.value(), 1e-10);
    assertEquals(expected.standardUncertainty(), actual.standardUncertainty(), 1e-10);
  }

  /** Four readings, u = 1 alone and 1 in common: the mean is known to sqrt(1/4 + 1). */
  @Test
  void repeatsShrinkOnlyTheIndependentPart() {
    List<ObservationEquation> equations = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      Observation observation =
          new Observation("r" + i, 10 + i, 1, List.of(new CommonPart(ZERO, 1)));
      equations.add(new ObservationEquation(observation, Map.of("x", 1.0), 0));
    }
    Estimate mean = fit(new LinearModel(List.of("x"), equations)).parameters().estimate("x");
    assertEquals(11.5, mean.value(), 1e-12);
    assertEquals(Math.sqrt(1.25), mean.standardUncertainty(), 1e-12);
  }

  @Test
  void statisticsHaveTheirDistributionUnderTheModel() {
    SplittableRandom random = new SplittableRandom(15);
    LinearModel shape = random(random, 7, 3);
    int runs = 2000;
    double squares = 0;
    double statistic = 0;
    int rejected = 0;
    for (int run = 0; run < runs; run++) {
      Fit fit = fit(simulated(shape, random));
      squares += fit.test().orElseThrow().squareSum() / runs;
      statistic += Math.pow(fit.observations().get(2).slipStatistic().orElseThrow(), 2) / runs;
      rejected += fit.test().orElseThrow().agrees(0.05) ? 0 : 1;
    }
    assertEquals(4, squares, 4 * Math.sqrt(8.0 / runs));
    assertEquals(1, statistic, 4 * Math.sqrt(2.0 / runs));
    assertEquals(0.05, rejected / (double) runs, 4 * Math.sqrt(0.0475 / runs));
  }

  private static LinearModel simulated(LinearModel shape, SplittableRandom random) {
    double zero = random.nextGaussian();
    double scale = random.nextGaussian();
    List<ObservationEquation> equations = new ArrayList<>();
    for (ObservationEquation equation : shape.equations()) {
      Observation old = equation.observation();
      double truth = equation.constant();
      for (double coefficient : equation.coefficients().values()) {
        truth += 3 * coefficient;
      }
      double error =
          old.independentStandardUncertainty() * random.nextGaussian()
              + old.effect(ZERO) * zero
              + old.effect(SCALE) * scale;
      equations.add(
          new ObservationEquation(
              new Observation(
                  old.id(), truth + error, old.independentStandardUncertainty(), old.commonParts()),
              equation.coefficients(),
              equation.constant()));
    }
    return new LinearModel(shape.unknowns(), equations);
  }

  /** With a slip of the size called smallest detectable, a 5 % test finds it in 80 % of cases. */
  @Test
  void smallestDetectableSlipIsFoundInFourOfFiveCases() {
    SplittableRandom random = new SplittableRandom(16);
    LinearModel shape = random(random, 7, 3);
    double slip = fit(shape).observations().get(4).smallestDetectableSlip().orElseThrow();
    int runs = 2000;
    int found = 0;
    for (int run = 0; run < runs; run++) {
      LinearModel model = simulated(shape, random);
      List<ObservationEquation> equations = new ArrayList<>(model.equations());
      ObservationEquation hit = equations.get(4);
      Observation old = hit.observation();
      equations.set(
          4,
          new ObservationEquation(
              new Observation(
                  old.id(),
                  old.observed() + slip,
                  old.independentStandardUncertainty(),
                  old.commonParts()),
              hit.coefficients(),
              hit.constant()));
      Fit fit = fit(new LinearModel(model.unknowns(), equations));
      double statistic = fit.observations().get(4).slipStatistic().orElseThrow();
      found += Math.abs(statistic) > 1.959964 ? 1 : 0;
    }
    assertEquals(0.80, found / (double) runs, 4 * Math.sqrt(0.16 / runs));
  }

  @Test
  void locatesASlipWhereRedundancyAllows() {
    List<ObservationEquation> equations = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      double observed = i == 3 ? 5.02 : 5 + 0.0005 * i;
      equations.add(
          new ObservationEquation(
              Observation.independent("r" + i, observed, 0.001), Map.of("x", 1.0), 0));
    }
    Fit fit = fit(new LinearModel(List.of("x"), equations));
    SuspectedSlip slip = fit.suspectedSlip(0.05).orElseThrow();
    assertTrue(slip.located());
    assertEquals(List.of("r3"), slip.observationIds());
    assertTrue(slip.probability() < 1e-6);
    assertEquals(0.019, fit.observation("r3").estimatedSlip().orElseThrow(), 1e-3);
    equations.remove(3);
    assertTrue(fit(new LinearModel(List.of("x"), equations)).suspectedSlip(0.05).isEmpty());
  }
}
