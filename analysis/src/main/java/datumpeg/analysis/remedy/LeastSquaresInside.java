package datumpeg.analysis.remedy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The step z that makes the sum of (slope·z + room)² least while each stays at or above a bound.
 *
 * <p>A convex quadratic programme in three unknowns: at its solution at most three of the bounds
 * matter, and the set is the right one if what it gives breaks no bound and is pressed against each
 * that is held: the conditions of Karush, Kuhn and Tucker, which for such a programme make it the
 * solution. The bound most broken is held and what is not pressed let go until that is so; where
 * this does not end, all sets of up to three are tried, small ones first.
 */
final class LeastSquaresInside {
  private static final int UNKNOWNS = 3;
  private static final double BROKEN = 1e-8;
  private static final int MOST_CHANGES = 10;

  /** Slopes are of the order of 1, so that this is rounding. */
  private static final double NO_PIVOT = 1e-13;

  private final double[][] slopes;
  private final double[] rooms;
  private final double bound;
  private final double[][] normal = new double[UNKNOWNS][UNKNOWNS];
  private final double[] right = new double[UNKNOWNS];

  private LeastSquaresInside(double[][] slopes, double[] rooms, double bound) {
    this.slopes = slopes;
    this.rooms = rooms;
    this.bound = bound;
    for (int i = 0; i < rooms.length; i++) {
      for (int row = 0; row < UNKNOWNS; row++) {
        right[row] -= slopes[i][row] * rooms[i];
        for (int column = 0; column < UNKNOWNS; column++) {
          normal[row][column] += slopes[i][row] * slopes[i][column];
        }
      }
    }
  }

  /** The step; no step at all if rounding hides the solution. */
  static double[] step(double[][] slopes, double[] rooms, double bound) {
    LeastSquaresInside search = new LeastSquaresInside(slopes, rooms, bound);
    Optional<double[]> likely = search.pressingOnTheMostBroken();
    if (likely.isPresent()) {
      return likely.get();
    }
    for (int size = 0; size <= UNKNOWNS; size++) {
      Optional<double[]> found = search.holding(new ArrayList<>(), 0, size);
      if (found.isPresent()) {
        return found.get();
      }
    }
    return new double[UNKNOWNS];
  }

  private Optional<double[]> pressingOnTheMostBroken() {
    List<Integer> held = new ArrayList<>();
    for (int change = 0; change < MOST_CHANGES; change++) {
      Optional<double[]> found = bordered(held);
      if (found.isEmpty()) {
        return Optional.empty();
      }
      double[] step = found.get();
      int loose = leastPressed(step);
      int broken = mostBroken(step);
      if (loose >= 0) {
        held.remove(loose);
      } else if (broken < 0) {
        return found;
      } else if (held.size() == UNKNOWNS) {
        return Optional.empty();
      } else {
        held.add(broken);
      }
    }
    return Optional.empty();
  }

  private Optional<double[]> holding(List<Integer> held, int from, int more) {
    if (more == 0) {
      return bordered(held).filter(step -> leastPressed(step) < 0 && mostBroken(step) < 0);
    }
    for (int i = from; i < rooms.length; i++) {
      held.add(i);
      Optional<double[]> found = holding(held, i + 1, more - 1);
      if (found.isPresent()) {
        return found;
      }
      held.remove(held.size() - 1);
    }
    return Optional.empty();
  }

  /** Which of those held, by its place among them, pulls instead of pressing most; −1 if none. */
  private static int leastPressed(double[] step) {
    int loose = -1;
    for (int k = UNKNOWNS; k < step.length; k++) {
      if (step[k] > BROKEN && (loose < 0 || step[k] > step[UNKNOWNS + loose])) {
        loose = k - UNKNOWNS;
      }
    }
    return loose;
  }

  /** Which bound a step breaks most; −1 if it breaks none. */
  private int mostBroken(double[] step) {
    int broken = -1;
    double least = bound - BROKEN;
    for (int i = 0; i < rooms.length; i++) {
      double room = rooms[i];
      for (int k = 0; k < UNKNOWNS; k++) {
        room += slopes[i][k] * step[k];
      }
      if (!(room >= least)) {
        least = room;
        broken = i;
      }
    }
    return broken;
  }

  /**
   * Normal equations bordered by the bounds that are held: the step, then for each of these what it
   * is pressed with, below 0. Empty if they leave something open.
   */
  private Optional<double[]> bordered(List<Integer> held) {
    int size = UNKNOWNS + held.size();
    double[][] rows = new double[size][size + 1];
    for (int row = 0; row < UNKNOWNS; row++) {
      System.arraycopy(normal[row], 0, rows[row], 0, UNKNOWNS);
      rows[row][size] = right[row];
    }
    for (int k = 0; k < held.size(); k++) {
      int i = held.get(k);
      for (int row = 0; row < UNKNOWNS; row++) {
        rows[row][UNKNOWNS + k] = slopes[i][row];
        rows[UNKNOWNS + k][row] = slopes[i][row];
      }
      rows[UNKNOWNS + k][size] = bound - rooms[i];
    }
    if (!eliminate(rows)) {
      return Optional.empty();
    }
    double[] solution = new double[size];
    for (int row = 0; row < size; row++) {
      solution[row] = rows[row][size];
    }
    return Optional.of(solution);
  }

  /**
   * Gauss-Jordan elimination with row pivoting, right-hand sides in the last column; false if
   * nothing is left of a pivot. The systems are too small for a library's overhead.
   */
  private static boolean eliminate(double[][] rows) {
    int size = rows.length;
    for (int column = 0; column < size; column++) {
      int pivot = column;
      for (int row = column + 1; row < size; row++) {
        if (Math.abs(rows[row][column]) > Math.abs(rows[pivot][column])) {
          pivot = row;
        }
      }
      double[] top = rows[pivot];
      if (!(Math.abs(top[column]) > NO_PIVOT)) {
        return false;
      }
      rows[pivot] = rows[column];
      rows[column] = top;
      for (int k = size; k >= column; k--) {
        top[k] /= top[column];
      }
      for (int row = 0; row < size; row++) {
        subtract(rows[row], row == column ? 0 : rows[row][column], top, column);
      }
    }
    return true;
  }

  private static void subtract(double[] from, double times, double[] row, int start) {
    for (int k = start; times != 0 && k < row.length; k++) {
      from[k] -= times * row[k];
    }
  }
}
