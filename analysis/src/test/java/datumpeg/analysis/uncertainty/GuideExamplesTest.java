package datumpeg.analysis.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.analysis.stat.StudentT;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Worked examples of JCGM 100:2008 (the GUM), annexes G and H. */
final class GuideExamplesTest {
  /** H.1, end-gauge calibration, in nanometres. */
  @Test
  void endGaugeOfH1() {
    Map<String, Estimate> inputs = new LinkedHashMap<>();
    inputs.put("standard", new Estimate(50_000_623, 25));
    inputs.put("difference", new Estimate(215, Estimate.combine(5.8, 3.9, 6.7)));
    inputs.put("expansion difference", new Estimate(0, 1e-6 / Math.sqrt(3)));
    inputs.put("expansion", new Estimate(11.5e-6, 2e-6 / Math.sqrt(3)));
    inputs.put("temperature", new Estimate(-0.1, Estimate.combine(0.2, 0.5 / Math.sqrt(2))));
    inputs.put("temperature difference", new Estimate(0, 0.05 / Math.sqrt(3)));
    JointEstimate joint = JointEstimate.independent(inputs);
    Linearised standard = joint.quantity("standard");
    Linearised correction =
        joint
            .quantity("expansion difference")
            .times(joint.quantity("temperature"))
            .plus(joint.quantity("expansion").times(joint.quantity("temperature difference")));
    Linearised length =
        standard.plus(joint.quantity("difference")).minus(standard.times(correction));
    assertEquals(50_000_838, length.value(), 1e-6);
    assertEquals(31.66, length.estimate().standardUncertainty(), 5e-3);

    assertEquals(9.682, Estimate.combine(5.8, 3.9, 6.7), 5e-4);
    // H.1.6: 16 effective degrees of freedom, t99 = 2.92 (table G.2).
    double factor = StudentT.quantile(0.995, 16);
    assertEquals(2.9208, factor, 5e-5);
    double standardLength = 50_000_623;
    assertEquals(2.8868, standardLength * 0.1 * 1e-6 / Math.sqrt(3), 5e-4);
    assertEquals(16.599, standardLength * 11.5e-6 * 0.05 / Math.sqrt(3), 5e-4);
    assertEquals(93, length.estimate().expanded(factor), 0.6);
  }

  /**
   * H.2, simultaneous resistance and reactance: three correlated means, three correlated results.
   */
  @Test
  void impedanceOfH2() {
    double[][] readings = {
      {5.007, 19.663e-3, 1.0456},
      {4.994, 19.639e-3, 1.0438},
      {5.005, 19.640e-3, 1.0468},
      {4.990, 19.685e-3, 1.0428},
      {4.999, 19.678e-3, 1.0433}
    };
    JointEstimate joint = means(List.of("V", "I", "phi"), readings);
    assertEquals(-0.3553, joint.correlation("V", "I"), 5e-5);
    assertEquals(0.8576, joint.correlation("V", "phi"), 5e-5);
    assertEquals(-0.6451, joint.correlation("I", "phi"), 5e-5);
    assertEquals(4.999, joint.value("V"), 1e-12);
    assertEquals(19.661e-3, joint.value("I"), 1e-12);
    assertEquals(1.04446, joint.value("phi"), 1e-12);
    assertEquals(3.2094e-3, joint.estimate("V").standardUncertainty(), 5e-8);
    assertEquals(9.4710e-6, joint.estimate("I").standardUncertainty(), 5e-11);
    assertEquals(7.5206e-4, joint.estimate("phi").standardUncertainty(), 5e-9);
    Linearised impedance = joint.quantity("V").dividedBy(joint.quantity("I"));
    Linearised resistance = impedance.times(joint.quantity("phi").cosine());
    Linearised reactance = impedance.times(joint.quantity("phi").sine());
    assertEstimate(127.732, 0.0711, resistance);
    assertEstimate(219.847, 0.2956, reactance);
    assertEstimate(254.260, 0.2363, impedance);
    assertEquals(-0.588, resistance.correlationWith(reactance), 5e-4);
    assertEquals(-0.485, resistance.correlationWith(impedance), 5e-4);
    assertEquals(0.9925, reactance.correlationWith(impedance), 5e-5);
  }

  private static void assertEstimate(double value, double uncertainty, Linearised actual) {
    assertEquals(value, actual.value(), 5e-4);
    assertEquals(uncertainty, actual.estimate().standardUncertainty(), 5e-5);
  }

  /** Means of simultaneous readings with the covariance of the means (5.2.3, eq. (17)). */
  private static JointEstimate means(List<String> names, double[][] readings) {
    int count = readings.length;
    int size = names.size();
    double[] means = new double[size];
    for (double[] row : readings) {
      for (int i = 0; i < size; i++) {
        means[i] += row[i] / count;
      }
    }
    double[][] covariance = new double[size][size];
    for (double[] row : readings) {
      for (int i = 0; i < size; i++) {
        for (int j = 0; j < size; j++) {
          covariance[i][j] += (row[i] - means[i]) * (row[j] - means[j]) / (count * (count - 1.0));
        }
      }
    }
    return JointEstimate.of(names, means, covariance);
  }

  /** G.4.1: parts of 0.25, 0.57 and 0.82 %, together with 19 effective degrees of freedom. */
  @Test
  void expandedByStudentOfG4() {
    assertEquals(1.02947, Estimate.combine(0.25, 0.57, 0.82), 5e-6);
    double factor = StudentT.quantile(0.975, 19);
    assertEquals(2.093, factor, 5e-4);
    assertEquals(2.1547, new Estimate(0, 1.02947).expanded(factor), 5e-5);
  }
}
