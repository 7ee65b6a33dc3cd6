package datumpeg.analysis.adjust;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The distance to take next. While nothing checks the distances it is the one that best checks
 * them; after that the one that most reduces the uncertainty of the point known worst: the largest
 * semi-axis of its standard error ellipse, its mark's definition included, which no distance
 * shrinks.
 *
 * <p>No candidate is adjusted: one more distance lowers the covariance of the marks by k k' ({@link
 * FurtherObservations}). To first order that is what adjusting again would give; a test holds it.
 *
 * @param pair the two points to measure between
 * @param reason what it is good for
 * @param point the worst point as things stand
 * @param nowMetres its largest semi-axis
 * @param thenMetres the same with the distance taken
 */
public record NextMeasurement(
    PointPair pair, Reason reason, String point, double nowMetres, double thenMetres) {

  /** What the next measurement does first. */
  public enum Reason {
    /** It lets a slip show. */
    MAKES_CHECKABLE,
    /** It brings the worst point nearer to certainty. */
    REDUCES_WORST_POINT
  }

  /** Gains below this share of the worst semi-axis are none. Our choice. */
  private static final double LEAST_GAIN = 1e-3;

  /** Ties go to the candidate named first. */
  private static final double CLEARLY_BETTER = 1 + 1e-9;

  /**
   * A distance that could be taken.
   *
   * @param accuracy how it would be read, with what it would share with distances taken; its value
   *     plays no part
   */
  public record Candidate(PointPair pair, Observation accuracy) {}

  /** The best of the candidates; empty if none of them helps. */
  public static Optional<NextMeasurement> among(AdjustedPlan plan, List<Candidate> candidates) {
    return new Choice(plan).among(candidates);
  }

  /** The worst point of a plan and what a further distance would do to it. */
  private static final class Choice {
    private final AdjustedPlan plan;
    private final FurtherObservations further;
    private final AdjustedPoint worst;
    private final FurtherObservations.Form worstX;
    private final FurtherObservations.Form worstY;

    Choice(AdjustedPlan plan) {
      this.plan = plan;
      this.further = plan.fit().further();
      AdjustedPoint largest = plan.points().get(0);
      for (AdjustedPoint point : plan.points()) {
        if (point.largestSemiAxisMetres() > largest.largestSemiAxisMetres() * CLEARLY_BETTER) {
          largest = point;
        }
      }
      this.worst = largest;
      this.worstX = further.quantity(Map.of(PlanState.xOf(worst.name()), 1.0));
      this.worstY = further.quantity(Map.of(PlanState.yOf(worst.name()), 1.0));
    }

    Optional<NextMeasurement> among(List<Candidate> candidates) {
      boolean checkable = plan.fit().degreesOfFreedom() > 0;
      MissingDistances.Unchecked unchecked = new MissingDistances.Unchecked(plan, further);
      Optional<NextMeasurement> best = Optional.empty();
      double most = checkable ? LEAST_GAIN * worst.largestSemiAxisMetres() : 1e-9;
      for (Candidate candidate : candidates) {
        FurtherObservations.Form taken =
            further.observation(
                plan.coefficients(candidate.pair().first(), candidate.pair().second()),
                candidate.accuracy());
        double then = then(taken);
        double merit =
            checkable
                ? worst.largestSemiAxisMetres() - then
                : unchecked.gain(candidate.pair(), candidate.accuracy().standardUncertainty());
        if (merit > most * CLEARLY_BETTER) {
          most = merit;
          best =
              Optional.of(
                  new NextMeasurement(
                      candidate.pair(),
                      checkable ? Reason.REDUCES_WORST_POINT : Reason.MAKES_CHECKABLE,
                      worst.name(),
                      worst.largestSemiAxisMetres(),
                      then));
        }
      }
      return best;
    }

    private double then(FurtherObservations.Form taken) {
      double x = further.gain(worstX, taken);
      double y = further.gain(worstY, taken);
      double xx = worst.xStandardUncertaintyMetres() * worst.xStandardUncertaintyMetres() - x * x;
      double yy = worst.yStandardUncertaintyMetres() * worst.yStandardUncertaintyMetres() - y * y;
      return AdjustedPoint.largestSemiAxis(xx, yy, worst.covarianceSquareMetres() - x * y);
    }
  }
}
