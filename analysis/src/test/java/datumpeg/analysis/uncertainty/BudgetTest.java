package datumpeg.analysis.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

final class BudgetTest {
  /**
   * End-gauge calibration, JCGM 100:2008, H.1, table H.1: the parts in nanometres and their
   * combined 31.7 nm (quoted from memory). Which origin they stand for here is of no matter to the
   * sum.
   */
  @Test
  void addsThePartsOfAPublishedBudget() {
    Estimate length =
        new Estimate(0, 25, Budget.of(Origin.METER, 25))
            .widened(9.7, Origin.SCATTER)
            .widened(2.9, Origin.TEMPERATURE)
            .widened(16.6, Origin.TEMPERATURE);
    assertEquals(31.7, length.standardUncertainty(), 0.05);
    assertEquals(31.7, length.budget().standardUncertaintyWithout(Set.of()), 0.05);
    assertEquals(
        Math.sqrt(25 * 25 + 9.7 * 9.7),
        length.budget().standardUncertaintyWithout(Set.of(Origin.TEMPERATURE)),
        1e-12);
  }

  @Test
  void followsSumsFactorsAndShifts() {
    Estimate one = new Estimate(3, 2, Budget.of(Origin.DEFINITION, 2));
    Estimate other = new Estimate(5, 1, Budget.of(Origin.SCATTER, 1));
    Budget expected = new Budget(1, 0, 4, 0, 0, 0, 0);
    assertEquals(expected, one.plus(other).budget());
    assertEquals(expected, one.minus(other).shifted(7).budget());
    assertEquals(expected, Estimate.sum(List.of(one, other)).budget());
    assertEquals(new Budget(9, 0, 36, 0, 0, 0, 0), one.plus(other).scaled(-3).budget());
    assertEquals(Budget.NONE, Estimate.exact(4).budget());
    assertEquals(new Budget(0, 0, 0, 0, 0, 0, 25), new Estimate(1, 5).budget());
  }

  @Test
  void whatTwoValuesShareCancelsInTheirDifference() {
    double[][] shared = {{3}, {3}};
    JointEstimate joint =
        JointEstimate.of(List.of("a", "b"), new double[] {8, 1}, new double[][] {{1, 0}, {0, 1}})
            .widened(shared, Origin.METER);
    assertEquals(new Budget(1, 9, 0, 0, 0, 0, 0), joint.estimate("a").budget());
    assertEquals(Math.sqrt(10), joint.estimate("a").standardUncertainty());
    assertEquals(
        new Budget(2, 0, 0, 0, 0, 0, 0),
        joint.quantity("a").minus(joint.quantity("b")).estimate().budget());
    assertEquals(
        new Budget(2, 36, 0, 0, 0, 0, 0),
        joint.quantity("a").plus(joint.quantity("b")).estimate().budget());
  }

  @Test
  void independentValuesKeepTheirsWhenJoined() {
    Estimate known =
        new Estimate(2, 1, Budget.of(Origin.SCATTER, 1)).widened(2, Origin.TEMPERATURE);
    JointEstimate joint =
        JointEstimate.of(List.of("a"), new double[] {8}, new double[][] {{16}})
            .known(new double[][] {{3}}, Origin.METER)
            .with(JointEstimate.independent(Map.of("b", known)));
    assertEquals(new Budget(7, 9, 0, 0, 0, 0, 0), joint.estimate("a").budget());
    Budget both = joint.quantity("a").scaled(2).plus(joint.quantity("b")).estimate().budget();
    assertEquals(4 * 7 + 1, both.scatter(), 1e-14);
    assertEquals(4 * 9, both.meter(), 1e-14);
    assertEquals(4, both.temperature(), 1e-14);
    assertEquals(0, both.definition() + both.other());
  }

  /**
   * Two equal rectangular errors make a triangular one, of excess kurtosis −0.6, not −1.2. A
   * rectangle and a normal error with these cumulants cover it to within a per cent.
   */
  @Test
  void bowsOfTwoMembersAreNotOneRectangle() {
    Estimate one = new Estimate(0, 1, Budget.of(Origin.FORM, 1));
    Budget two = one.plus(one).scaled(1 / Math.sqrt(2)).budget();
    assertEquals(1, two.form(), 1e-15);
    assertEquals(0.5, two.formSquares(), 1e-15);
    assertEquals(Math.sqrt(3) * 0.9545, one.coverageFactor(), 1e-4);
    double triangular = Math.sqrt(6) * (1 - Math.sqrt(1 - 0.954499736));
    assertEquals(triangular, one.plus(one).coverageFactor(), 0.05);
    assertEquals(2, new Estimate(0, 1).coverageFactor());
  }
}
