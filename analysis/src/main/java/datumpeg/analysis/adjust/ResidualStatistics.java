package datumpeg.analysis.adjust;

import datumpeg.analysis.stat.Normal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ejml.data.DMatrixRMaj;

/** Residuals and what follows from them; the formulas stand at {@link AdjustedObservation}. */
final class ResidualStatistics {
  /**
   * Share of a slip an observation's residual must show for the observation to count as checked.
   */
  private static final double LEAST_CHECK = 1e-9;

  /** Share of an observation's own weight that rounding may leave where nothing checks it. */
  private static final double NOISE = 1e-12;

  /** Slip statistics correlated beyond this cannot be told apart in practice. Our choice. */
  private static final double INSEPARABLE = 0.95;

  /** Correlated beyond this they are one statistic but for rounding. */
  private static final double ALIKE = 1 - 1e-6;

  /** Shift that a two-sided 5 % test finds with probability 80 %: 1.95996 + 0.84162. */
  private static final double DETECTABLE_SHIFT = Normal.quantile(0.975) + Normal.quantile(0.80);

  private final List<AdjustedObservation> observations;
  private final Map<String, Integer> positions = new HashMap<>();
  private final AugmentedSystem system;
  private final RootRows orthogonal;
  private final RootRows adjustedRoot;
  private final double[] pushes;

  private ResidualStatistics(
      List<AdjustedObservation> observations,
      AugmentedSystem system,
      RootRows orthogonal,
      RootRows adjustedRoot,
      double[] pushes) {
    this.observations = List.copyOf(observations);
    this.pushes = pushes;
    this.system = system;
    this.orthogonal = orthogonal;
    this.adjustedRoot = adjustedRoot;
    for (AdjustedObservation one : observations) {
      positions.put(one.observation().id(), positions.size());
    }
  }

  /**
   * Statistics of n observations of u unknowns with g shared errors.
   *
   * @param orthogonal Q, (n+g)×(u+g), spans the weighted system
   * @param adjustedRoot B = A T, n×(u+g): B B' is the covariance of the adjusted observations
   * @param weightedResiduals n+g, from unknowns and shared errors together
   * @param solution unknowns, then shared errors
   */
  static ResidualStatistics of(
      List<Observation> observed,
      AugmentedSystem system,
      RootRows orthogonal,
      RootRows adjustedRoot,
      double[] weightedResiduals,
      double[] solution) {
    List<AdjustedObservation> observations = new ArrayList<>();
    double[] pushes = new double[observed.size()];
    for (int i = 0; i < observed.size(); i++) {
      double own = system.own(i);
      double total = observed.get(i).standardUncertainty();
      double adjusted = adjustedRoot.product(i, i);
      pushes[i] = weightedResiduals[i] / own;
      observations.add(
          one(
              observed.get(i),
              own * weightedResiduals[i] - system.sharedProduct(i, solution),
              Math.sqrt(Math.max(0, total * total - adjusted)),
              1 - adjustedRoot.product(i, orthogonal, i) / own,
              pushes[i],
              (1 - orthogonal.product(i, i)) / (own * own),
              Math.max(LEAST_CHECK / (total * total), NOISE / (own * own))));
    }
    return new ResidualStatistics(observations, system, orthogonal, adjustedRoot, pushes);
  }

  private static AdjustedObservation one(
      Observation observation,
      double residual,
      double residualUncertainty,
      double redundancy,
      double weightedResidual,
      double slipWeight,
      double leastWeight) {
    boolean checked = slipWeight > leastWeight && residualUncertainty > 0;
    double root = Math.sqrt(Math.max(0, slipWeight));
    return new AdjustedObservation(
        observation,
        observation.observed() + residual,
        residual,
        residualUncertainty,
        redundancy,
        when(checked, residual / residualUncertainty),
        when(checked, -weightedResidual / root),
        when(checked, -weightedResidual / slipWeight),
        when(checked, DETECTABLE_SHIFT / root));
  }

  private static OptionalDouble when(boolean present, double value) {
    return present ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  List<AdjustedObservation> observations() {
    return observations;
  }

  int position(String id) {
    Integer position = positions.get(id);
    if (position == null) {
      throw new IllegalArgumentException("adjustment: there is no observation " + id);
    }
    return position;
  }

  /** Qv = D + C C' - B B'. */
  double residualCovariance(String firstId, String secondId) {
    int i = position(firstId);
    int j = position(secondId);
    double[] effects = system.effects(i);
    double[] others = system.effects(j);
    double covariance = i == j ? system.own(i) * system.own(i) : 0;
    for (int g = 0; g < effects.length; g++) {
      covariance += effects[g] * others[g];
    }
    return covariance - adjustedRoot.product(i, j);
  }

  /** B times a vector. */
  double[] adjustedTimes(double[] vector) {
    double[] product = new double[observations.size()];
    for (int i = 0; i < product.length; i++) {
      product[i] = adjustedRoot.product(i, vector);
    }
    return product;
  }

  ChangeEffects changeEffects(double squareSum) {
    int n = observations.size();
    DMatrixRMaj slipWeights = new DMatrixRMaj(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        slipWeights.set(i, j, slipWeight(i, j));
      }
    }
    return ChangeEffects.of(observations, slipWeights, pushes, squareSum);
  }

  /**
   * The largest slip statistic, if larger than chance allows. Observations whose statistics move
   * together are one test; the probability is multiplied by the number of tests (Bonferroni).
   */
  Optional<SuspectedSlip> suspectedSlip(double significance) {
    int best = -1;
    for (int i = 0; i < observations.size(); i++) {
      if (observations.get(i).checked() && (best < 0 || size(i) > size(best))) {
        best = i;
      }
    }
    if (best < 0 || Normal.twoSided(size(best)) >= significance) {
      return Optional.empty();
    }
    double probability = Math.min(1, tests() * Normal.twoSided(size(best)));
    if (probability >= significance) {
      return Optional.empty();
    }
    List<String> alike = new ArrayList<>();
    for (int i = 0; i < observations.size(); i++) {
      if (observations.get(i).checked() && correlation(i, best) > INSEPARABLE) {
        alike.add(observations.get(i).observation().id());
      }
    }
    return Optional.of(new SuspectedSlip(alike, size(best), probability));
  }

  /** How many statistics there are that do not move exactly as an earlier one. */
  private int tests() {
    double[] weights = new double[observations.size()];
    int tests = 0;
    for (int i = 0; i < weights.length; i++) {
      weights[i] = slipWeight(i, i);
      tests += observations.get(i).checked() && !isLikeEarlier(i, weights) ? 1 : 0;
    }
    return tests;
  }

  private boolean isLikeEarlier(int i, double[] weights) {
    for (int j = 0; j < i; j++) {
      if (observations.get(j).checked()
          && Math.abs(slipWeight(i, j)) > ALIKE * Math.sqrt(weights[i] * weights[j])) {
        return true;
      }
    }
    return false;
  }

  private double size(int i) {
    return Math.abs(observations.get(i).slipStatistic().orElse(0));
  }

  private double correlation(int i, int j) {
    return Math.abs(slipWeight(i, j)) / Math.sqrt(slipWeight(i, i) * slipWeight(j, j));
  }

  /** P Qv P. */
  private double slipWeight(int i, int j) {
    return ((i == j ? 1 : 0) - orthogonal.product(i, j)) / (system.own(i) * system.own(j));
  }
}
