package datumpeg.analysis.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

final class LinearisedTest {
  private static final List<String> NAMES = List.of("a", "b");
  private static final double[][] COVARIANCE = {{4, 3}, {3, 4}};

  private static JointEstimate at(double a, double b) {
    return JointEstimate.of(NAMES, new double[] {a, b}, COVARIANCE);
  }

  @Test
  void aDifferenceOfCorrelatedValuesIsMoreCertain() {
    JointEstimate joint = at(7, 2);
    Linearised difference = joint.quantity("a").minus(joint.quantity("b"));
    assertEquals(5, difference.estimate().value());
    assertEquals(Math.sqrt(2), difference.estimate().standardUncertainty());
    assertEquals(0.75, joint.correlation("a", "b"));
    Linearised nothing = joint.quantity("a").minus(joint.quantity("a"));
    assertEquals(Estimate.exact(0), nothing.estimate());
    assertEquals(0, nothing.correlationWith(joint.quantity("a")));
  }

  @Test
  void gradientsAreThoseOfFiniteDifferences() {
    assertGradient(j -> j.quantity("a").plus(j.quantity("b")));
    assertGradient(j -> j.quantity("a").minus(j.quantity("b")));
    assertGradient(j -> j.quantity("a").times(j.quantity("b")));
    assertGradient(j -> j.quantity("a").dividedBy(j.quantity("b")));
    assertGradient(j -> j.quantity("a").squareRoot().scaled(3).shifted(1));
    assertGradient(j -> j.quantity("a").sine().plus(j.quantity("b").cosine()));
    assertGradient(j -> j.quantity("b").tangent());
    assertGradient(j -> Linearised.direction(j.quantity("a"), j.quantity("b")));
    assertGradient(j -> Linearised.direction(j.quantity("b"), j.quantity("a").scaled(-1)));
    assertGradient(j -> Linearised.mean(List.of(j.quantity("a"), j.quantity("b"), j.constant(9))));
    assertGradient(
        j -> j.quantity("a").mapped(StrictMath.exp(j.value("a")), StrictMath.exp(j.value("a"))));
  }

  private interface Formula {
    Linearised of(JointEstimate joint);
  }

  private static void assertGradient(Formula formula) {
    double a = 1.3;
    double b = -0.7;
    double h = 1e-6;
    Linearised quantity = formula.of(at(a, b));
    double byA = (formula.of(at(a + h, b)).value() - formula.of(at(a - h, b)).value()) / (2 * h);
    double byB = (formula.of(at(a, b + h)).value() - formula.of(at(a, b - h)).value()) / (2 * h);
    assertEquals(byA, quantity.sensitivity("a"), 1e-8);
    assertEquals(byB, quantity.sensitivity("b"), 1e-8);
    assertEquals(4 * byA * byA + 6 * byA * byB + 4 * byB * byB, quantity.variance(), 1e-6);
  }

  @Test
  void joiningIndependentValuesKeepsBothCovariances() {
    JointEstimate joined =
        at(1, 2).with(JointEstimate.independent(Map.of("c", new Estimate(5, 3))));
    assertEquals(List.of("a", "b", "c"), joined.names());
    assertEquals(3, joined.covariance("b", "a"));
    assertEquals(0, joined.covariance("b", "c"));
    assertEquals(new Estimate(5, 3), joined.estimate("c"));
    Estimate sum = joined.quantity("a").plus(joined.quantity("c")).estimate();
    assertEquals(6, sum.value());
    assertEquals(Math.sqrt(13), sum.standardUncertainty());
    assertEquals(new Budget(4, 0, 0, 0, 0, 0, 9), sum.budget());
  }

  @Test
  void laterChangesToTheGivenArraysDoNotReachIn() {
    double[] values = {1, 2};
    double[][] covariance = {{1, 0}, {0, 1}};
    JointEstimate joint = JointEstimate.of(NAMES, values, covariance);
    values[0] = 99;
    covariance[0][0] = 99;
    assertEquals(1, joint.estimate("a").value());
    assertEquals(1, joint.estimate("a").standardUncertainty());
  }

  @Test
  void refusesWhatDoesNotFit() {
    assertThrows(IllegalArgumentException.class, () -> at(1, 2).quantity("z"));
    assertThrows(
        IllegalArgumentException.class, () -> at(1, 2).quantity("a").plus(at(1, 2).quantity("a")));
    assertThrows(IllegalArgumentException.class, () -> at(-1, 2).quantity("a").squareRoot());
    JointEstimate zero = at(1, 0);
    assertThrows(
        IllegalArgumentException.class, () -> zero.quantity("a").dividedBy(zero.quantity("b")));
    assertThrows(
        IllegalArgumentException.class,
        () -> Linearised.direction(zero.quantity("b"), zero.constant(0)));
    assertThrows(IllegalArgumentException.class, () -> Linearised.mean(List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> JointEstimate.of(List.of("a", "a"), new double[2], COVARIANCE));
    assertThrows(
        IllegalArgumentException.class, () -> JointEstimate.of(NAMES, new double[1], COVARIANCE));
    assertThrows(
        IllegalArgumentException.class,
        () -> JointEstimate.of(NAMES, new double[] {Double.NaN, 0}, COVARIANCE));
    assertThrows(
        IllegalArgumentException.class,
        () -> JointEstimate.of(NAMES, new double[2], new double[][] {{-1, 0}, {0, 1}}));
    Map<String, Estimate> none = new LinkedHashMap<>();
    assertEquals(List.of(), JointEstimate.independent(none).names());
  }
}
