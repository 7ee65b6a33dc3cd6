package datumpeg.analysis.adjust;

import datumpeg.analysis.uncertainty.Linearised;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The observation to take next in a linear network, such as one of levels or of frames. While
 * nothing checks the observations it is the one that best checks them; after that the one that most
 * reduces the uncertainty of what is known worst. For distances in a plane: {@link
 * NextMeasurement}.
 *
 * <p>No candidate is adjusted: one more observation lowers the covariance of the unknowns by k k'
 * ({@link FurtherObservations}), and so the variance of a quantity a by (a'k)². A test adjusts
 * again.
 *
 * @param name of the candidate
 * @param reason what it is good for
 * @param worst name of what is known worst as things stand
 * @param now its standard uncertainty
 * @param then the same with the observation taken
 */
public record NextObservation(
    String name, NextMeasurement.Reason reason, String worst, double now, double then) {
  /** Gains below this share of the worst uncertainty are none. Our choice. */
  private static final double LEAST_GAIN = 1e-3;

  /** Ties go to the candidate named first. */
  private static final double CLEARLY_BETTER = 1 + 1e-9;

  /** Redundancy below this is none. */
  private static final double LEAST_CHECK = 1e-9;

  /**
   * An observation that could be taken.
   *
   * @param quantity what it would observe, of the fit's parameters
   * @param accuracy how it would be read, with what it would share with those taken; its value
   *     plays no part
   */
  public record Candidate(String name, Linearised quantity, Observation accuracy) {}

  /**
   * The best of the candidates; empty if none of them helps.
   *
   * @param wanted what is to be known, of the fit's parameters, by name; at least one
   */
  public static Optional<NextObservation> among(
      Fit fit, Map<String, Linearised> wanted, List<Candidate> candidates) {
    Map.Entry<String, Linearised> worst = worst(wanted);
    double now = Math.sqrt(worst.getValue().variance());
    FurtherObservations further = fit.further();
    FurtherObservations.Form known = further.quantity(worst.getValue());
    boolean checkable = fit.degreesOfFreedom() > 0;
    double most = checkable ? LEAST_GAIN * now : LEAST_CHECK;
    Optional<NextObservation> best = Optional.empty();
    for (Candidate candidate : candidates) {
      double along =
          further.gain(known, further.observation(candidate.quantity(), candidate.accuracy()));
      double then = Math.sqrt(Math.max(0, now * now - along * along));
      double merit = checkable ? now - then : checked(fit, candidate);
      if (merit > most * CLEARLY_BETTER) {
        most = merit;
        best =
            Optional.of(
                new NextObservation(
                    candidate.name(),
                    checkable
                        ? NextMeasurement.Reason.REDUCES_WORST_POINT
                        : NextMeasurement.Reason.MAKES_CHECKABLE,
                    worst.getKey(),
                    now,
                    then));
      }
    }
    return best;
  }

  private static Map.Entry<String, Linearised> worst(Map<String, Linearised> wanted) {
    if (wanted.isEmpty()) {
      throw new IllegalArgumentException(
          "next observation: nothing is to be known, expected at least one quantity");
    }
    Map.Entry<String, Linearised> worst = wanted.entrySet().iterator().next();
    double greatest = worst.getValue().variance();
    for (Map.Entry<String, Linearised> one : wanted.entrySet()) {
      double variance = one.getValue().variance();
      if (variance > greatest * CLEARLY_BETTER) {
        worst = one;
        greatest = variance;
      }
    }
    return worst;
  }

  /** The redundancy that the unchecked observations would gain, summed over them. */
  private static double checked(Fit fit, Candidate candidate) {
    double own = candidate.accuracy().independentStandardUncertainty();
    double[] shared = fit.covariancesWithAdjusted(candidate.quantity());
    double gain = 0;
    for (int i = 0; i < shared.length; i++) {
      AdjustedObservation taken = fit.observations().get(i);
      if (!taken.checked()) {
        double total = taken.observation().standardUncertainty();
        double variance = own * own + candidate.quantity().variance();
        gain += shared[i] * shared[i] / (total * total * variance);
      }
    }
    return gain;
  }
}
