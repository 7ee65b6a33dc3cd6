package datumpeg.analysis.adjust;

import datumpeg.analysis.uncertainty.Origin;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ejml.data.DMatrixRMaj;
import org.hipparchus.util.MathArrays;

/**
 * A linear model with its shared errors as unknowns of their own, each observed to be 0 ± 1: the
 * same solution and the same covariance as with the observations' full covariance D + C C', without
 * that n×n matrix (C. R. Henderson, Best linear unbiased estimation and prediction under a
 * selection model, 1975, recalled; a test holds it). Columns: u unknowns, then g shared errors.
 */
final class AugmentedSystem {
  private final int unknowns;
  private final List<String> groups;
  private final List<Origin> origins;
  private final double[] own;
  private final int[][] columns;
  private final double[][] coefficients;
  private final double[] reduced;

  private AugmentedSystem(
      int unknowns,
      List<String> groups,
      List<Origin> origins,
      double[] own,
      int[][] columns,
      double[][] coefficients,
      double[] reduced) {
    this.unknowns = unknowns;
    this.groups = groups;
    this.origins = origins;
    this.own = own;
    this.columns = columns;
    this.coefficients = coefficients;
    this.reduced = reduced;
  }

  static AugmentedSystem of(LinearModel model) {
    int n = model.equations().size();
    int unknowns = model.unknowns().size();
    Map<String, Integer> shared = new HashMap<>();
    List<String> groups = new ArrayList<>();
    List<Origin> origins = new ArrayList<>();
    double[] own = new double[n];
    double[] reduced = new double[n];
    int[][] columns = new int[n][];
    double[][] coefficients = new double[n][];
    for (int i = 0; i < n; i++) {
      ObservationEquation equation = model.equations().get(i);
      Observation observation = equation.observation();
      own[i] = observation.independentStandardUncertainty();
      reduced[i] = observation.observed() - equation.constant();
      int size = equation.coefficients().size() + observation.commonParts().size();
      columns[i] = new int[size];
      coefficients[i] = new double[size];
      int at = 0;
      for (Map.Entry<String, Double> entry : equation.coefficients().entrySet()) {
        columns[i][at] = model.position(entry.getKey());
        coefficients[i][at++] = entry.getValue();
      }
      for (CommonPart part : observation.commonParts()) {
        columns[i][at] =
            unknowns
                + shared.computeIfAbsent(
                    part.group(),
                    group -> {
                      groups.add(group);
                      origins.add(part.origin());
                      return groups.size() - 1;
                    });
        coefficients[i][at++] = part.effect();
      }
    }
    return new AugmentedSystem(
        unknowns, List.copyOf(groups), List.copyOf(origins), own, columns, coefficients, reduced);
  }

  /** Number of observations n. */
  int observations() {
    return own.length;
  }

  /** Number of unknowns u, shared errors apart. */
  int unknowns() {
    return unknowns;
  }

  /** u + g. */
  int size() {
    return unknowns + groups.size();
  }

  /** Names of the shared errors. */
  List<String> groups() {
    return groups;
  }

  /** What each of them comes from. */
  List<Origin> origins() {
    return origins;
  }

  /** Independent standard uncertainty of observation i. */
  double own(int i) {
    return own[i];
  }

  /** Row i, not weighted, times a vector over unknowns and shared errors. */
  double product(int i, double[] vector) {
    double sum = 0;
    for (int k = 0; k < columns[i].length; k++) {
      sum += coefficients[i][k] * vector[columns[i][k]];
    }
    return sum;
  }

  /** Shared errors' part of that product. */
  double sharedProduct(int i, double[] vector) {
    double sum = 0;
    for (int k = 0; k < columns[i].length; k++) {
      if (columns[i][k] >= unknowns) {
        sum += coefficients[i][k] * vector[columns[i][k]];
      }
    }
    return sum;
  }

  /** Effects of the shared errors on observation i. */
  double[] effects(int i) {
    double[] effects = new double[groups.size()];
    for (int k = 0; k < columns[i].length; k++) {
      if (columns[i][k] >= unknowns) {
        effects[columns[i][k] - unknowns] += coefficients[i][k];
      }
    }
    return effects;
  }

  /** Unknowns' part of the rows times a matrix with a row for each unknown, or more: n×k. */
  DMatrixRMaj unknownsTimes(RootRows matrix) {
    DMatrixRMaj result = new DMatrixRMaj(own.length, matrix.width());
    for (int i = 0; i < own.length; i++) {
      for (int k = 0; k < columns[i].length; k++) {
        if (columns[i][k] < unknowns) {
          matrix.addRow(columns[i][k], coefficients[i][k], result.data, i * matrix.width());
        }
      }
    }
    return result;
  }

  /** {@link #weighted} times a matrix with a row for each unknown and shared error: (n+g)×k. */
  DMatrixRMaj weightedTimes(RootRows matrix) {
    int n = own.length;
    int width = matrix.width();
    DMatrixRMaj result = new DMatrixRMaj(n + groups.size(), width);
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < columns[i].length; k++) {
        matrix.addRow(columns[i][k], coefficients[i][k] / own[i], result.data, i * width);
      }
    }
    for (int g = 0; g < groups.size(); g++) {
      matrix.addRow(unknowns + g, 1, result.data, (n + g) * width);
    }
    return result;
  }

  /** Every row over its uncertainty, then one row for each shared error: (n+g)×(u+g). */
  DMatrixRMaj weighted() {
    int n = own.length;
    int size = size();
    DMatrixRMaj matrix = new DMatrixRMaj(n + groups.size(), size);
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < columns[i].length; k++) {
        matrix.add(i, columns[i][k], coefficients[i][k] / own[i]);
      }
    }
    for (int g = 0; g < groups.size(); g++) {
      matrix.set(n + g, unknowns + g, 1);
    }
    return matrix;
  }

  /** b: observed minus constant over its uncertainty, then a 0 for each shared error. */
  double[] weightedReduced() {
    double[] right = new double[own.length + groups.size()];
    for (int i = 0; i < own.length; i++) {
      right[i] = reduced[i] / own[i];
    }
    return right;
  }

  /**
   * f = b − r − A x of the weighted system, summed as if in twice the digits.
   *
   * @param solution x, unknowns and shared errors
   * @param rest r, weighted
   */
  double[] missing(double[] solution, double[] rest) {
    int n = own.length;
    double[] missing = new double[n + groups.size()];
    for (int i = 0; i < n; i++) {
      int size = columns[i].length;
      double[] factors = Arrays.copyOf(coefficients[i], size + 2);
      double[] values = new double[size + 2];
      for (int k = 0; k < size; k++) {
        values[k] = -solution[columns[i][k]];
      }
      factors[size] = own[i];
      values[size] = -rest[i];
      factors[size + 1] = 1;
      values[size + 1] = reduced[i];
      missing[i] = MathArrays.linearCombination(factors, values) / own[i];
    }
    for (int g = 0; g < groups.size(); g++) {
      missing[n + g] = -rest[n + g] - solution[unknowns + g];
    }
    return missing;
  }

  /** g = −A'r of the weighted system, summed as if in twice the digits. */
  double[] unbalanced(double[] rest) {
    int n = own.length;
    int[] sizes = new int[size()];
    for (int[] row : columns) {
      for (int column : row) {
        sizes[column]++;
      }
    }
    double[][] factors = new double[size()][];
    double[][] values = new double[size()][];
    for (int k = 0; k < sizes.length; k++) {
      factors[k] = new double[sizes[k] + 1];
      values[k] = new double[sizes[k] + 1];
      factors[k][sizes[k]] = k < unknowns ? 0 : 1;
      values[k][sizes[k]] = k < unknowns ? 0 : -rest[n + k - unknowns];
    }
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < columns[i].length; k++) {
        int column = columns[i][k];
        int at = --sizes[column];
        factors[column][at] = coefficients[i][k];
        values[column][at] = -rest[i] / own[i];
      }
    }
    double[] unbalanced = new double[factors.length];
    for (int k = 0; k < unbalanced.length; k++) {
      unbalanced[k] = MathArrays.linearCombination(factors[k], values[k]);
    }
    return unbalanced;
  }

  /** Weighted normal matrix over unknowns and shared errors. */
  DMatrixRMaj normalMatrix() {
    DMatrixRMaj normal = new DMatrixRMaj(size(), size());
    for (int i = 0; i < own.length; i++) {
      addSquare(normal, columns[i], coefficients[i], columns[i].length, 1 / (own[i] * own[i]));
    }
    for (int g = unknowns; g < size(); g++) {
      normal.add(g, g, 1);
    }
    return normal;
  }

  /** Right-hand side that goes with {@link #normalMatrix}. */
  double[] normalRight() {
    double[] right = new double[size()];
    for (int i = 0; i < own.length; i++) {
      for (int k = 0; k < columns[i].length; k++) {
        right[columns[i][k]] += coefficients[i][k] * reduced[i] / (own[i] * own[i]);
      }
    }
    return right;
  }

  /** A'A of the unknowns alone, all observations weighing the same. */
  DMatrixRMaj unweightedNormalMatrix() {
    DMatrixRMaj normal = new DMatrixRMaj(unknowns, unknowns);
    for (int i = 0; i < own.length; i++) {
      int size = 0;
      while (size < columns[i].length && columns[i][size] < unknowns) {
        size++;
      }
      addSquare(normal, columns[i], coefficients[i], size, 1);
    }
    return normal;
  }

  /** v'Pv where the unknowns are all 0, shared errors taking what they best can. */
  double squareSumAtZero() {
    double[] shared = new double[size()];
    DMatrixRMaj block = new DMatrixRMaj(groups.size(), groups.size());
    double[] right = new double[groups.size()];
    for (int i = 0; i < own.length; i++) {
      double[] effects = effects(i);
      double weight = 1 / (own[i] * own[i]);
      for (int g = 0; g < effects.length; g++) {
        right[g] += effects[g] * reduced[i] * weight;
        for (int h = 0; h < effects.length; h++) {
          block.add(g, h, effects[g] * effects[h] * weight);
        }
      }
    }
    for (int g = 0; g < right.length; g++) {
      block.add(g, g, 1);
    }
    double sum = 0;
    double[] solved = PositiveSystem.of(block).orElseThrow().solve(right);
    System.arraycopy(solved, 0, shared, unknowns, solved.length);
    for (double error : solved) {
      sum += error * error;
    }
    for (int i = 0; i < own.length; i++) {
      double residual = (sharedProduct(i, shared) - reduced[i]) / own[i];
      sum += residual * residual;
    }
    return sum;
  }

  private static void addSquare(
      DMatrixRMaj normal, int[] columns, double[] coefficients, int size, double weight) {
    for (int k = 0; k < size; k++) {
      for (int l = 0; l < size; l++) {
        normal.add(columns[k], columns[l], weight * coefficients[k] * coefficients[l]);
      }
    }
  }
}
