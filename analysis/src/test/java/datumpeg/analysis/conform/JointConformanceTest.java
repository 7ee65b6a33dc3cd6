package datumpeg.analysis.conform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.stat.Normal;
import java.util.List;
import org.junit.jupiter.api.Test;

class JointConformanceTest {

  @Test
  void boundsAreThoseOfBonferroniAndOfTheLeast() {
    JointConformance joint = JointConformance.ofProbabilities(List.of(0.99, 0.97, 0.80));
    assertEquals(0.76, joint.least(), 1e-12);
    assertEquals(0.80, joint.most(), 1e-12);
  }

  @Test
  void theLowerBoundIsNeverNegative() {
    assertEquals(0, JointConformance.ofProbabilities(List.of(0.2, 0.3)).least());
  }

  @Test
  void withoutOutcomesNothingCanFail() {
    assertEquals(new JointConformance(1, 1, 0), JointConformance.ofProbabilities(List.of()));
  }

  @Test
  void wordsNeverClaimCertainty() {
    assertEquals("76 to 80 %", JointConformance.ofProbabilities(List.of(0.99, 0.97, 0.80)).words());
    assertEquals("over 99.8 %", JointConformance.ofProbabilities(List.of(0.9999999)).words());
    assertEquals("99.4 %", JointConformance.ofProbabilities(List.of(0.9945)).words());
  }

  /** Two outcomes known apart, together and opposite: all three truths lie within the bounds. */
  @Test
  void trueProbabilitiesLieBetween() {
    double p = Normal.cdf(1.2);
    JointConformance joint = JointConformance.ofProbabilities(List.of(p, p));
    double apart = p * p;
    double together = p;
    double opposite = Normal.cdf(1.2) - Normal.cdf(-1.2);
    for (double truth : new double[] {apart, together, opposite}) {
      assertTrue(joint.least() <= truth + 1e-12 && truth <= joint.most());
    }
    assertEquals(opposite, joint.least(), 1e-12, "the lower bound is reached");
  }
}
