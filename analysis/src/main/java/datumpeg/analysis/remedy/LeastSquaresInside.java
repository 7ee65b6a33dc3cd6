package datumpeg.analysis.remedy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The step z that makes the sum of (slope·z + room)² least while each stays at or above a bound.
 *
 * <p>A convex quadratic programme in three unknowns: at its solution at most three of the bounds
 * matter, so sets of up to three are held, small ones first, until one breaks no bound and is
 * pressed against each it holds: the conditions of Karush, Kuhn and Tucker, which for such a
 * programme make it the solution.
 */
final class LeastSquaresInside {
  private static final int UNKNOWNS = 3;
  private static final double BROKEN = 1e-8;

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
    for (int size = 0; size <= UNKNOWNS; size++) {
      Optional<double[]> found = search.holding(new ArrayList<>(), 0, size);
      if (found.isPresent()) {
        return found.get();
      }
    }
    return new double[UNKNOWNS];
  }

  private Optional<double[]> holding(List<Integer> held, int from, int more) {
    if (more == 0) {
      return solution(held);
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

  /** Normal equations bordered by the bounds that are held. */
  private Optional<double[]> solution(List<Integer> held) {
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
    double[] step = {rows[0][size], rows[1][size], rows[2][size]};
    boolean pressed = true;
    for (int k = UNKNOWNS; k < size; k++) {
      pressed &= rows[k][size] <= BROKEN;
    }
    return pressed && breaksNone(step) ? Optional.of(step) : Optional.empty();
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

  private boolean breaksNone(double[] step) {
    for (int i = 0; i < rooms.length; i++) {
      double room = rooms[i];
      for (int k = 0; k < UNKNOWNS; k++) {
        room += slopes[i][k] * step[k];
      }
      if (!(room >= bound - BROKEN)) {
        return false;
      }
    }
    return true;
  }
}
