package datumpeg.analysis.adjust;

import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.JointEstimate;
import datumpeg.analysis.uncertainty.Linearised;
import datumpeg.analysis.uncertainty.Origin;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;

/**
 * A least-squares solution: unknowns, residuals, and how well each observation is checked.
 * Immutable.
 */
public final class Fit {
  private final JointEstimate parameters;
  private final double[] sharedErrors;
  private final List<String> groups;
  private final DMatrixRMaj root;
  private final double squareSum;
  private final ResidualStatistics statistics;

  private Fit(
      JointEstimate parameters,
      double[] sharedErrors,
      List<String> groups,
      DMatrixRMaj root,
      double squareSum,
      ResidualStatistics statistics) {
    this.parameters = parameters;
    this.sharedErrors = sharedErrors;
    this.groups = groups;
    this.root = root;
    this.squareSum = squareSum;
    this.statistics = statistics;
  }

  /**
   * Assembles a solution.
   *
   * @param orthogonal (n+g)×(u+g), spans the weighted system
   * @param root T, (u+g)×(u+g): T T' is the covariance of unknowns and shared errors
   */
  static Fit of(
      LinearModel model, AugmentedSystem system, DMatrixRMaj orthogonal, DMatrixRMaj root) {
    int u = system.unknowns();
    int size = system.size();
    RootRows rows = new RootRows(root);
    RootRows orthogonalRows = new RootRows(orthogonal);
    Refinement refined = Refinement.of(system, orthogonalRows, rows);
    double[] solution = refined.solution();
    double[] residuals = refined.residuals();
    double squareSum = 0;
    for (double residual : residuals) {
      squareSum += residual * residual;
    }
    double[] unknowns = new double[u];
    double[] shared = new double[size - u];
    System.arraycopy(solution, 0, unknowns, 0, u);
    System.arraycopy(solution, u, shared, 0, shared.length);
    return new Fit(
        byOrigin(JointEstimate.of(model.unknowns(), unknowns, rows.covariance(u)), system, u, rows),
        shared,
        system.groups(),
        root,
        squareSum,
        ResidualStatistics.of(
            model.observations(),
            system,
            orthogonalRows,
            new RootRows(system.unknownsTimes(rows)),
            residuals,
            solution));
  }

  /**
   * An unknown answers to a shared error, itself one observation of 0 ± 1, by its covariance with
   * it: the column of A'P of that observation is a unit vector, so x changes by Q e.
   */
  private static JointEstimate byOrigin(
      JointEstimate unknowns, AugmentedSystem system, int count, RootRows root) {
    JointEstimate known = unknowns;
    List<Origin> origins = system.origins();
    for (Origin origin : new LinkedHashSet<>(origins)) {
      int[] groups =
          IntStream.range(0, origins.size()).filter(g -> origins.get(g) == origin).toArray();
      double[][] answers = new double[count][groups.length];
      for (int i = 0; i < count; i++) {
        for (int k = 0; k < groups.length; k++) {
          answers[i][k] = root.product(i, count + groups[k]);
        }
      }
      known = known.known(answers, origin);
    }
    return known;
  }

  /** The same fit, its unknowns given as values instead of corrections to approximate values. */
  Fit withValues(double[] values) {
    return new Fit(
        parameters.withValues(values), sharedErrors, groups, root, squareSum, statistics);
  }

  /**
   * The unknowns with their covariance, from the stated accuracy, not scaled by the variance
   * factor.
   */
  public JointEstimate parameters() {
    return parameters;
  }

  /** The observations in the order given. */
  public List<AdjustedObservation> observations() {
    return statistics.observations();
  }

  /** One observation. */
  public AdjustedObservation observation(String id) {
    return observations().get(statistics.position(id));
  }

  /** Observations less unknowns. */
  public int degreesOfFreedom() {
    return observations().size() - parameters.names().size();
  }

  /** The test of all observations together; absent without redundancy. */
  public Optional<GlobalTest> test() {
    return degreesOfFreedom() == 0
        ? Optional.empty()
        : Optional.of(new GlobalTest(squareSum, degreesOfFreedom()));
  }

  /** Covariance of two residuals. */
  public double residualCovariance(String firstId, String secondId) {
    return statistics.residualCovariance(firstId, secondId);
  }

  /** What changes of the observed values would do to the square sum. */
  public ChangeEffects changeEffects() {
    return statistics.changeEffects(squareSum);
  }

  /** A slip the observations show at the given significance, for example 0.05. */
  public Optional<SuspectedSlip> suspectedSlip(double significance) {
    return statistics.suspectedSlip(significance);
  }

  /**
   * What the observations say of a shared error, in its standard deviations: its best linear
   * prediction c'P(l - A x) with the error variance 1 - c'P Qv P c (C. R. Rao, Linear statistical
   * inference, 4a.11, recalled). Value 0 and uncertainty 1 mean they say nothing.
   *
   * @throws IllegalArgumentException if no observation names the group
   */
  public Estimate commonEffect(String group) {
    int g = groups.indexOf(group);
    if (g < 0) {
      throw new IllegalArgumentException(
          "shared error: no observation names " + group + "; named are " + groups);
    }
    int row = parameters.names().size() + g;
    double variance = 0;
    for (int k = 0; k < root.numCols; k++) {
      variance += root.get(row, k) * root.get(row, k);
    }
    return new Estimate(sharedErrors[g], Math.sqrt(variance));
  }

  /** What further observations would do to the unknowns. */
  FurtherObservations further() {
    return new FurtherObservations(this, root);
  }

  /** Effects of the shared errors known here on an observation, by their row after the unknowns. */
  Map<Integer, Double> sharedBy(Observation observation) {
    Map<Integer, Double> shared = new HashMap<>();
    for (CommonPart part : observation.commonParts()) {
      int g = groups.indexOf(part.group());
      if (g >= 0) {
        shared.merge(parameters.names().size() + g, part.effect(), Double::sum);
      }
    }
    return shared;
  }

  /** Variance of what an observation shares with none of those here. */
  double ownVariance(Observation observation) {
    double own = observation.independentStandardUncertainty();
    double variance = own * own;
    for (CommonPart part : observation.commonParts()) {
      variance += groups.contains(part.group()) ? 0 : part.effect() * part.effect();
    }
    return variance;
  }

  /** Covariances of the adjusted observations, in their order, with a quantity of the unknowns. */
  double[] covariancesWithAdjusted(Linearised quantity) {
    RootRows rows = new RootRows(root);
    double[] seen = new double[root.numCols];
    double[] sensitivities = quantity.sensitivities();
    for (int i = 0; i < sensitivities.length; i++) {
      if (sensitivities[i] != 0) {
        rows.addRow(i, sensitivities[i], seen, 0);
      }
    }
    return statistics.adjustedTimes(seen);
  }
}
