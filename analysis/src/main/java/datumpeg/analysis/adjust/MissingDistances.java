package datumpeg.analysis.adjust;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Which further distances would help most. Ties go to the pair named first. */
final class MissingDistances {
  private static final double CLEARLY_BETTER = 1 + 1e-9;

  private final PlanState state;

  MissingDistances(PlanState state) {
    this.state = state;
  }

  /** Distances that, taken one after the other, leave no point free. */
  List<PointPair> toFix(NullSpace free) {
    List<PointPair> missing = new ArrayList<>();
    NullSpace rest = free;
    while (rest.dimension() > 0) {
      PointPair best = mostTelling(rest);
      missing.add(best);
      NullSpace next = rest.after(state.gradient(best.first(), best.second()));
      if (next.dimension() == rest.dimension()) {
        return List.of();
      }
      rest = next;
    }
    return missing;
  }

  private PointPair mostTelling(NullSpace free) {
    List<PointPair> pairs = pairs(state.names());
    PointPair best = pairs.get(0);
    double most = 0;
    for (PointPair pair : pairs) {
      double seen = free.seenBy(state.gradient(pair.first(), pair.second()));
      if (seen > most * CLEARLY_BETTER) {
        most = seen;
        best = pair;
      }
    }
    return best;
  }

  /** The untaken distance from a weak point that is least known, and so tells most. */
  static Optional<PointPair> toStiffen(AdjustedPlan plan, List<String> weak) {
    FurtherObservations further = plan.fit().further();
    Optional<PointPair> best = Optional.empty();
    double most = 0;
    for (PointPair pair : untaken(plan)) {
      if (weak.contains(pair.first()) || weak.contains(pair.second())) {
        double variance =
            further.variance(further.quantity(plan.coefficients(pair.first(), pair.second())));
        if (variance > most * CLEARLY_BETTER) {
          most = variance;
          best = Optional.of(pair);
        }
      }
    }
    return best;
  }

  /** The untaken distance that would check the unchecked ones best. */
  static Optional<PointPair> toCheck(AdjustedPlan plan) {
    Unchecked unchecked = new Unchecked(plan, plan.fit().further());
    double own =
        plan.distances().stream()
            .mapToDouble(d -> d.observation().independentStandardUncertainty())
            .min()
            .orElse(1);
    Optional<PointPair> best = Optional.empty();
    double most = 1e-9;
    for (PointPair pair : untaken(plan)) {
      double gain = unchecked.gain(pair, own);
      if (gain > most * CLEARLY_BETTER) {
        most = gain;
        best = Optional.of(pair);
      }
    }
    return best;
  }

  /**
   * The distances that no other checks. Taking a distance d with standard uncertainty s lowers the
   * variance of an adjusted observation a by cov(a, d)^2 / (s^2 + var(d)), which over the
   * observation's own variance is the redundancy it gains.
   */
  static final class Unchecked {
    private final AdjustedPlan plan;
    private final FurtherObservations further;
    private final List<FurtherObservations.Form> adjusted = new ArrayList<>();
    private final List<Double> variances = new ArrayList<>();

    Unchecked(AdjustedPlan plan, FurtherObservations further) {
      this.plan = plan;
      this.further = further;
      for (MeasuredDistance taken : plan.distances()) {
        if (!plan.fit().observation(taken.observation().id()).checked()) {
          double total = taken.observation().standardUncertainty();
          adjusted.add(further.quantity(plan.coefficients(taken.from(), taken.to())));
          variances.add(total * total);
        }
      }
    }

    /** That gain of redundancy, summed over them, for a distance read with this accuracy. */
    double gain(PointPair pair, double standardUncertainty) {
      FurtherObservations.Form candidate =
          further.quantity(plan.coefficients(pair.first(), pair.second()));
      double variance =
          standardUncertainty * standardUncertainty + further.covariance(candidate, candidate);
      double gain = 0;
      for (int i = 0; i < adjusted.size(); i++) {
        double shared = further.covariance(adjusted.get(i), candidate);
        gain += shared * shared / (variances.get(i) * variance);
      }
      return gain;
    }
  }

  private static List<PointPair> untaken(AdjustedPlan plan) {
    return pairs(plan.names()).stream()
        .filter(pair -> plan.distances().stream().noneMatch(d -> pair.joins(d.from(), d.to())))
        .toList();
  }

  private static List<PointPair> pairs(List<String> names) {
    List<PointPair> pairs = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      for (int j = i + 1; j < names.size(); j++) {
        pairs.add(new PointPair(names.get(i), names.get(j)));
      }
    }
    return pairs;
  }
}
