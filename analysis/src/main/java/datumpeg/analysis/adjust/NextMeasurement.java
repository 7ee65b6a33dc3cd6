package datumpeg.analysis.adjust;

import java.util.List;
import java.util.Optional;

/**
 * The distance to take next. While nothing checks the distances it is the one that best checks
 * them; after that the one that most reduces the uncertainty of the point known worst: the largest
 * semi-axis of its standard error ellipse, its mark's definition included, which no distance
 * shrinks.
 *
 * <p>No candidate is adjusted: one more distance lowers the covariance of the marks by k k' ({@link
 * Fit#gain}). To first order that is what adjusting again would give; a test holds it.
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
    private final AdjustedPoint worst;

    Choice(AdjustedPlan plan) {
      this.plan = plan;
      AdjustedPoint largest = plan.points().get(0);
      for (AdjustedPoint point : plan.points()) {
        if (point.largestSemiAxisMetres() > largest.largestSemiAxisMetres() * CLEARLY_BETTER) {
          largest = point;
        }
      }
      this.worst = largest;
    }

    Optional<NextMeasurement> among(List<Candidate> candidates) {
      boolean checkable = plan.fit().degreesOfFreedom() > 0;
      Optional<NextMeasurement> best = Optional.empty();
      double most = checkable ? LEAST_GAIN * worst.largestSemiAxisMetres() : 1e-9;
      for (Candidate candidate : candidates) {
        double[] gain = gain(candidate);
        double then = then(gain);
        double merit =
            checkable
                ? worst.largestSemiAxisMetres() - then
                : MissingDistances.gain(
                    plan.marks(), candidate.pair(), candidate.accuracy().standardUncertainty());
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

    private double[] gain(Candidate candidate) {
      return plan.fit()
          .gain(
              plan.coefficients(candidate.pair().first(), candidate.pair().second()),
              candidate.accuracy());
    }

    private double then(double[] gain) {
      double x = plan.component(gain, PlanState.xOf(worst.name()));
      double y = plan.component(gain, PlanState.yOf(worst.name()));
      double xx = worst.xStandardUncertaintyMetres() * worst.xStandardUncertaintyMetres() - x * x;
      double yy = worst.yStandardUncertaintyMetres() * worst.yStandardUncertaintyMetres() - y * y;
      return AdjustedPoint.largestSemiAxis(xx, yy, worst.covarianceSquareMetres() - x * y);
    }
  }
}
