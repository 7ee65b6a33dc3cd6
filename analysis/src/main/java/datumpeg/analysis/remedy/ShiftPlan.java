package datumpeg.analysis.remedy;

import datumpeg.analysis.remedy.Shifting.Bay;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
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
      return Optional.of(
          new ShiftPlan(staying, new Programme(staying, frames).solve(bays, overall)));
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

  /**
   * Unknowns: each moving frame's move toward end n and toward end 1, then the worst changed bay.
   */
  private static final class Programme {
    private final int frames;
    private final int[] places;
    private final int size;
    private final List<LinearConstraint> constraints = new ArrayList<>();

    Programme(List<Integer> staying, int frames) {
      this.frames = frames;
      this.places = new int[frames];
      int moving = 0;
      for (int frame = 0; frame < frames; frame++) {
        places[frame] = staying.contains(frame) ? -1 : 2 * moving++;
      }
      this.size = 2 * moving + 1;
    }

    /** The move of each frame, toward end n; 0 for those that stay. */
    List<Double> solve(List<Bay> bays, Optional<Bay> overall) {
      for (int bay = 0; bay < bays.size(); bay++) {
        inside(bay, bay + 1, bays.get(bay));
        if (places[bay] >= 0 || places[bay + 1] >= 0) {
          worst(bay, bays.get(bay).deviationMetres());
        }
      }
      overall.ifPresent(whole -> inside(0, frames - 1, whole));
      double[] cost = new double[size];
      Arrays.fill(cost, 1);
      cost[size - 1] = BAYS_FIRST;
      double[] solution =
          new SimplexSolver()
              .optimize(
                  new MaxIter(10_000),
                  new LinearObjectiveFunction(cost, 0),
                  new LinearConstraintSet(constraints),
                  GoalType.MINIMIZE,
                  new NonNegativeConstraint(true))
              .getPoint();
      List<Double> moves = new ArrayList<>();
      for (int place : places) {
        moves.add(place < 0 ? 0.0 : solution[place] - solution[place + 1]);
      }
      return moves;
    }

    private double[] difference(int from, int to) {
      double[] row = new double[size];
      if (places[to] >= 0) {
        row[places[to]] = 1;
        row[places[to] + 1] = -1;
      }
      if (places[from] >= 0) {
        row[places[from]] = -1;
        row[places[from] + 1] = 1;
      }
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
      above[size - 1] = -1;
      below[size - 1] = -1;
      constraints.add(new LinearConstraint(above, Relationship.LEQ, -deviationMetres));
      constraints.add(new LinearConstraint(below, Relationship.LEQ, deviationMetres));
    }
  }
}
