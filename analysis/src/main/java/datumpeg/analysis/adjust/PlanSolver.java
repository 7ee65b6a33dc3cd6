package datumpeg.analysis.adjust;

import java.util.List;
import java.util.Optional;

/** Gauss-Newton with step halving: linearise, adjust, move, until nothing moves. */
final class PlanSolver {
  private static final int MOST_STEPS = 100;
  private static final int MOST_HALVINGS = 30;

  /** After a step below this share of the network's size one more reaches the noise of doubles. */
  private static final double SETTLED = 1e-9;

  private PlanSolver() {}

  /** Where the iteration ended, and the fit there if it settled. */
  record Attempt(PlanState state, Optional<Fit> fit) {}

  /** A state on the way. */
  private record Step(PlanState state, double squareSum) {}

  static Attempt solve(PlanState start, List<MeasuredDistance> distances) {
    PlanState state = start;
    double squareSum = squareSum(start, distances);
    for (int i = 0; i < MOST_STEPS; i++) {
      Optional<double[]> solved = LeastSquares.solve(state.linearised(distances));
      if (solved.isEmpty()) {
        return new Attempt(state, Optional.empty());
      }
      double[] corrections = solved.get();
      if (largest(corrections) <= SETTLED * size(state)) {
        return settled(state.moved(corrections, 1), distances);
      }
      Step step = improved(state, corrections, squareSum, distances);
      state = step.state();
      squareSum = step.squareSum();
    }
    return new Attempt(state, Optional.empty());
  }

  private static Attempt settled(PlanState state, List<MeasuredDistance> distances) {
    return new Attempt(
        state,
        LeastSquares.adjust(state.linearised(distances))
            .complete()
            .map(fit -> fit.withValues(state.values())));
  }

  /** The longest of the steps 1, 1/2, 1/4 ... that does not worsen the square sum. */
  private static Step improved(
      PlanState state, double[] corrections, double before, List<MeasuredDistance> distances) {
    double share = 1;
    for (int i = 0; i < MOST_HALVINGS; i++) {
      Step next = step(state.moved(corrections, share), distances);
      if (next.squareSum() <= before * (1 + 1e-9) + 1e-18) {
        return next;
      }
      share /= 2;
    }
    return step(state.moved(corrections, share), distances);
  }

  private static Step step(PlanState state, List<MeasuredDistance> distances) {
    return new Step(state, squareSum(state, distances));
  }

  private static double squareSum(PlanState state, List<MeasuredDistance> distances) {
    return AugmentedSystem.of(state.linearised(distances)).squareSumAtZero();
  }

  private static double largest(double[] values) {
    double largest = 0;
    for (double value : values) {
      largest = Math.max(largest, Math.abs(value));
    }
    return largest;
  }

  private static double size(PlanState state) {
    return largest(state.values());
  }
}
