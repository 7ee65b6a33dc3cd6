package datumpeg.analysis.remedy;

import java.util.ArrayList;
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
 * The best pose of a rectangle among the edges of a slab: first the greatest least room, then the
 * least sum of squares of those that leave as much within a tenth of a millimetre. Room is how much
 * further from an edge something lies than planned.
 *
 * <p>Room is linear in a shift and, for the small turns of a slab, nearly so in a turn: it is made
 * linear twice. The greatest least room is a linear programme; among the poses that reach it the
 * least squares are found by trying every set of up to three edges that stop them (the conditions
 * of Karush, Kuhn and Tucker), of which a slab has few. Immutable.
 */
public final class PlacementProblem {
  /**
   * Room within this counts as equally good: no line is shifted by millimetres to gain what nobody
   * can mark (common practice, no source).
   */
  private static final double SAME_METRES = 1e-4;

  private static final double SLOPE_STEP_METRES = 1e-3;

  /** Along, across, and the turn. */
  private static final int UNKNOWNS = 3;

  private final List<Facing> facings;
  private final double reachMetres;

  /**
   * @param facings what faces which edge
   * @param reachMetres about the size of the rectangle, to bring a turn to metres
   */
  public PlacementProblem(List<Facing> facings, double reachMetres) {
    this.facings = List.copyOf(facings);
    this.reachMetres = reachMetres;
  }

  /** Something of the rectangle that faces something of the slab: how far apart they lie. */
  public interface Facing {
    /** Distance between them when the rectangle has a pose, in metres, positive inside the slab. */
    double distanceMetres(Pose pose);

    /** The same as designed. */
    double plannedMetres();
  }

  /**
   * A shift after a turn about the origin.
   *
   * @param cosine of the turn
   * @param sine of the turn
   */
  public record Pose(
      double xMetres, double yMetres, double turnRadians, double cosine, double sine) {
    public Pose(double xMetres, double yMetres, double turnRadians) {
      this(xMetres, yMetres, turnRadians, StrictMath.cos(turnRadians), StrictMath.sin(turnRadians));
    }

    /** Where a point of the design lies. */
    public double movedX(double x, double y) {
      return xMetres + cosine * x - sine * y;
    }

    /** Where a point of the design lies. */
    public double movedY(double x, double y) {
      return yMetres + sine * x + cosine * y;
    }
  }

  /** The best pose, from one that is nearly right; empty if the edges do not hold it all round. */
  public Optional<Pose> solve(Pose start) {
    return solveFromNear(start).flatMap(this::solveFromNear);
  }

  /** As {@link #solve}, from a pose so near that once is enough. */
  public Optional<Pose> solveFromNear(Pose start) {
    try {
      return Optional.of(improved(start));
    } catch (MathIllegalStateException e) {
      return Optional.empty();
    }
  }

  private Pose improved(Pose pose) {
    List<Pose> around = around(pose);
    double[][] slopes = new double[facings.size()][UNKNOWNS];
    double[] rooms = new double[facings.size()];
    for (int i = 0; i < rooms.length; i++) {
      Facing facing = facings.get(i);
      rooms[i] = facing.distanceMetres(pose) - facing.plannedMetres();
      for (int k = 0; k < UNKNOWNS; k++) {
        slopes[i][k] =
            (facing.distanceMetres(around.get(2 * k))
                    - facing.distanceMetres(around.get(2 * k + 1)))
                / (2 * SLOPE_STEP_METRES);
      }
    }
    double[] step = LeastSquaresInside.step(slopes, rooms, leastRoom(slopes, rooms) - SAME_METRES);
    return shifted(pose, step[0], step[1], step[2]);
  }

  /** A little to either side: along, across, turned. */
  private List<Pose> around(Pose pose) {
    double h = SLOPE_STEP_METRES;
    return List.of(
        shifted(pose, h, 0, 0),
        shifted(pose, -h, 0, 0),
        shifted(pose, 0, h, 0),
        shifted(pose, 0, -h, 0),
        shifted(pose, 0, 0, h),
        shifted(pose, 0, 0, -h));
  }

  private Pose shifted(Pose pose, double x, double y, double turn) {
    return new Pose(
        pose.xMetres() + x, pose.yMetres() + y, pose.turnRadians() + turn / reachMetres);
  }

  /** The greatest least room any small step can reach. */
  private static double leastRoom(double[][] slopes, double[] rooms) {
    List<LinearConstraint> constraints = new ArrayList<>();
    for (int i = 0; i < rooms.length; i++) {
      constraints.add(
          new LinearConstraint(
              new double[] {slopes[i][0], slopes[i][1], slopes[i][2], -1},
              Relationship.GEQ,
              -rooms[i]));
    }
    return new SimplexSolver()
        .optimize(
            new MaxIter(1000),
            new LinearObjectiveFunction(new double[] {0, 0, 0, 1}, 0),
            new LinearConstraintSet(constraints),
            GoalType.MAXIMIZE,
            new NonNegativeConstraint(false))
        .getValue();
  }
}
