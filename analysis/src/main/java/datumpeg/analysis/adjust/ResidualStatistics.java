package datumpeg.analysis.adjust;

import datumpeg.analysis.stat.Normal;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.mult.VectorVectorMult_DDRM;

/** Residuals and what follows from them; the formulas stand at {@link AdjustedObservation}. */
final class ResidualStatistics {
  /**
   * Share of a slip an observation's residual must show for the observation to count as checked.
   */
  private static final double LEAST_CHECK = 1e-9;

  /** Slip statistics correlated beyond this cannot be told apart in practice. Our choice. */
  private static final double INSEPARABLE = 0.95;

  /** Shift that a two-sided 5 % test finds with probability 80 %: 1.95996 + 0.84162. */
  private static final double DETECTABLE_SHIFT = Normal.quantile(0.975) + Normal.quantile(0.80);

  private final List<AdjustedObservation> observations;
  private final DMatrixRMaj residualCovariance;
  private final DMatrixRMaj weightedResiduals;
  private final DMatrixRMaj slipWeights;

  private ResidualStatistics(
      List<AdjustedObservation> observations,
      DMatrixRMaj residualCovariance,
      DMatrixRMaj weightedResiduals,
      DMatrixRMaj slipWeights) {
    this.observations = List.copyOf(observations);
    this.residualCovariance = residualCovariance;
    this.weightedResiduals = weightedResiduals;
    this.slipWeights = slipWeights;
  }

  /** Statistics from v (n×1), Qv (n×n), P v (n×1), P Qv P (n×n) and P (n×n). */
  static ResidualStatistics of(
      List<Observation> observed,
      DMatrixRMaj residuals,
      DMatrixRMaj residualCovariance,
      DMatrixRMaj weightedResiduals,
      DMatrixRMaj slipWeights,
      DMatrixRMaj weights) {
    List<AdjustedObservation> observations = new ArrayList<>();
    for (int i = 0; i < observed.size(); i++) {
      double redundancy = 0;
      for (int j = 0; j < observed.size(); j++) {
        redundancy += residualCovariance.get(i, j) * weights.get(j, i);
      }
      observations.add(
          one(
              observed.get(i),
              residuals.get(i, 0),
              Math.sqrt(Math.max(0, residualCovariance.get(i, i))),
              redundancy,
              weightedResiduals.get(i, 0),
              slipWeights.get(i, i),
              weights.get(i, i)));
    }
    return new ResidualStatistics(observations, residualCovariance, weightedResiduals, slipWeights);
  }

  private static AdjustedObservation one(
      Observation observation,
      double residual,
      double residualUncertainty,
      double redundancy,
      double weightedResidual,
      double slipWeight,
      double weight) {
    boolean checked = slipWeight > LEAST_CHECK * weight;
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
    for (int i = 0; i < observations.size(); i++) {
      if (observations.get(i).observation().id().equals(id)) {
        return i;
      }
    }
    throw new IllegalArgumentException("adjustment: there is no observation " + id);
  }

  double residualCovariance(String firstId, String secondId) {
    return residualCovariance.get(position(firstId), position(secondId));
  }

  ChangeEffects changeEffects(double squareSum) {
    return ChangeEffects.of(observations, slipWeights, weightedResiduals, squareSum);
  }

  Estimate predicted(DMatrixRMaj effects) {
    double value = -VectorVectorMult_DDRM.innerProd(effects, weightedResiduals);
    double learned = VectorVectorMult_DDRM.innerProdA(effects, slipWeights, effects);
    return new Estimate(value, Math.sqrt(Math.max(0, 1 - learned)));
  }

  /**
   * The largest slip statistic, if larger than chance allows. Observations whose statistics move
   * together are one test; the probability is multiplied by the number of tests (Bonferroni).
   */
  Optional<SuspectedSlip> suspectedSlip(double significance) {
    int best = -1;
    int tests = 0;
    for (int i = 0; i < observations.size(); i++) {
      if (!observations.get(i).checked()) {
        continue;
      }
      if (likeEarlier(i).isEmpty()) {
        tests++;
      }
      if (best < 0 || size(i) > size(best)) {
        best = i;
      }
    }
    if (best < 0) {
      return Optional.empty();
    }
    double probability = Math.min(1, tests * Normal.twoSided(size(best)));
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

  private Optional<Integer> likeEarlier(int i) {
    for (int j = 0; j < i; j++) {
      if (observations.get(j).checked() && correlation(i, j) > 1 - 1e-6) {
        return Optional.of(j);
      }
    }
    return Optional.empty();
  }

  private double size(int i) {
    return Math.abs(observations.get(i).slipStatistic().orElse(0));
  }

  private double correlation(int i, int j) {
    double scale = Math.sqrt(slipWeights.get(i, i) * slipWeights.get(j, j));
    return Math.abs(slipWeights.get(i, j)) / scale;
  }
}
