package datumpeg.analysis.remedy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

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

  private final double[][] slopes;
  private final double[] rooms;
  private final double bound;
  private final DMatrixRMaj normal = new DMatrixRMaj(UNKNOWNS, UNKNOWNS);
  private final double[] right = new double[UNKNOWNS];

  private LeastSquaresInside(double[][] slopes, double[] rooms, double bound) {
    this.slopes = slopes;
    this.rooms = rooms;
    this.bound = bound;
    for (int i = 0; i < rooms.length; i++) {
      for (int row = 0; row < UNKNOWNS; row++) {
        right[row] -= slopes[i][row] * rooms[i];
        for (int column = 0; column < UNKNOWNS; column++) {
          normal.add(row, column, slopes[i][row] * slopes[i][column]);
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
    DMatrixRMaj matrix = new DMatrixRMaj(size, size);
    DMatrixRMaj constants = new DMatrixRMaj(size, 1);
    CommonOps_DDRM.insert(normal, matrix, 0, 0);
    for (int row = 0; row < UNKNOWNS; row++) {
      constants.set(row, 0, right[row]);
    }
    for (int k = 0; k < held.size(); k++) {
      int i = held.get(k);
      for (int row = 0; row < UNKNOWNS; row++) {
        matrix.set(row, UNKNOWNS + k, slopes[i][row]);
        matrix.set(UNKNOWNS + k, row, slopes[i][row]);
      }
      constants.set(UNKNOWNS + k, 0, bound - rooms[i]);
    }
    DMatrixRMaj solved = new DMatrixRMaj(size, 1);
    if (!CommonOps_DDRM.solve(matrix, constants, solved)) {
      return Optional.empty();
    }
    double[] step = {solved.get(0), solved.get(1), solved.get(2)};
    boolean pressed = true;
    for (int k = UNKNOWNS; k < size; k++) {
      pressed &= solved.get(k) <= BROKEN;
    }
    return pressed && breaksNone(step) ? Optional.of(step) : Optional.empty();
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
