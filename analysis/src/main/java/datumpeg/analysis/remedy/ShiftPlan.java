package datumpeg.analysis.remedy;

import datumpeg.analysis.remedy.Shifting.Bay;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.optim.MaxIter;
import org.hipparchus.optim.linear.LinearConstraint;
import org.hipparchus.optim.linear.LinearConstraintSet;
import org.hipparchus.optim.linear.LinearObjectiveFunction;
import org.hipparchus.optim.linear.NonNegativeConstraint;
import org.hipparchus.optim.linear.Relationship;
import org.hipparchus.optim.linear.SimplexSolver;
import org.hipparchus.optim.nonlinear.scalar.GoalType;

/**
 * The moves of the frames of a row of which some stay.
 *
 * @param staying the frames that stay, by index
 * @param movesMetres by frame, positive toward end n
 */
record ShiftPlan(List<Integer> staying, List<Double> movesMetres) {
  /** A millimetre of a bay counts for so many millimetres of moving: bays come first. */
  private static final double BAYS_FIRST = 1000;

  ShiftPlan {
    staying = List.copyOf(staying);
    movesMetres = List.copyOf(movesMetres);
  }

  /** The best moves; empty if none bring all inside, or none are needed. */
  static Optional<ShiftPlan> of(List<Integer> staying, List<Bay> bays, Optional<Bay> overall) {
    int frames = bays.size() + 1;
    if (staying.size() == frames) {
      return Optional.empty();
    }
    try {
      double[] solution = new Programme(staying, frames).solve(bays, overall);
      List<Double> moves = new ArrayList<>();
      for (int i = 0; i < frames; i++) {
        moves.add(solution[2 * i] - solution[2 * i + 1]);
      }
      return Optional.of(new ShiftPlan(staying, moves));
    } catch (MathIllegalStateException e) {
      return Optional.empty();
    }
  }

  boolean isMoved(int frame) {
    return !staying.contains(frame);
  }

  double moveMetres(int frame) {
    return movesMetres.get(frame);
  }

  double totalMetres() {
    return movesMetres.stream().mapToDouble(Math::abs).sum();
  }

  /** Unknowns: each frame's move toward end n and toward end 1, then the worst changed bay. */
  private static final class Programme {
    private final List<Integer> staying;
    private final int frames;
    private final List<LinearConstraint> constraints = new ArrayList<>();

    Programme(List<Integer> staying, int frames) {
      this.staying = staying;
      this.frames = frames;
    }

    double[] solve(List<Bay> bays, Optional<Bay> overall) {
      for (int frame : staying) {
        double[] row = new double[2 * frames + 1];
        row[2 * frame] = 1;
        row[2 * frame + 1] = 1;
        constraints.add(new LinearConstraint(row, Relationship.EQ, 0));
      }
      for (int bay = 0; bay < bays.size(); bay++) {
        inside(bay, bay + 1, bays.get(bay));
        if (!staying.contains(bay) || !staying.contains(bay + 1)) {
          worst(bay, bays.get(bay).deviationMetres());
        }
      }
      overall.ifPresent(whole -> inside(0, frames - 1, whole));
      double[] cost =
          DoubleStream.concat(
                  DoubleStream.generate(() -> 1).limit(2L * frames), DoubleStream.of(BAYS_FIRST))
              .toArray();
      return new SimplexSolver()
          .optimize(
              new MaxIter(10_000),
              new LinearObjectiveFunction(cost, 0),
              new LinearConstraintSet(constraints),
              GoalType.MINIMIZE,
              new NonNegativeConstraint(true))
          .getPoint();
    }

    private double[] difference(int from, int to) {
      double[] row = new double[2 * frames + 1];
      row[2 * to] = 1;
      row[2 * to + 1] = -1;
      row[2 * from] = -1;
      row[2 * from + 1] = 1;
      return row;
    }

    private void inside(int from, int to, Bay bay) {
      double[] row = difference(from, to);
      if (Double.isFinite(bay.mostMetres())) {
        constraints.add(
            new LinearConstraint(
                row, Relationship.LEQ, bay.mostMetres() - bay.deviationMetres() + 1e-9));
      }
      if (Double.isFinite(bay.leastMetres())) {
        constraints.add(
            new LinearConstraint(
                row, Relationship.GEQ, bay.leastMetres() - bay.deviationMetres() - 1e-9));
      }
    }

    private void worst(int bay, double deviationMetres) {
      double[] above = difference(bay, bay + 1);
      double[] below = Arrays.stream(above).map(x -> -x).toArray();
      above[2 * frames] = -1;
      below[2 * frames] = -1;
      constraints.add(new LinearConstraint(above, Relationship.LEQ, -deviationMetres));
      constraints.add(new LinearConstraint(below, Relationship.LEQ, deviationMetres));
    }
  }
}
