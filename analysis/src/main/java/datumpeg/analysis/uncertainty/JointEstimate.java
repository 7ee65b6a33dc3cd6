package datumpeg.analysis.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Several named values known together, with their covariance: the input to {@link Linearised}. The
 * covariance may be known by its origins; what no origin is named for is scatter. Immutable.
 */
public final class JointEstimate {
  private final List<String> names;
  private final Map<String, Integer> positions;
  private final double[] values;
  private final double[][] covariance;
  private final List<SharedPart> parts;

  private JointEstimate(
      List<String> names, double[] values, double[][] covariance, List<SharedPart> parts) {
    this(names, positions(names), values, covariance, parts);
  }

  private JointEstimate(
      List<String> names,
      Map<String, Integer> positions,
      double[] values,
      double[][] covariance,
      List<SharedPart> parts) {
    this.names = List.copyOf(names);
    this.positions = positions;
    this.values = values;
    this.covariance = covariance;
    this.parts = List.copyOf(parts);
  }

  private static Map<String, Integer> positions(List<String> names) {
    Map<String, Integer> positions = new HashMap<>(2 * names.size());
    for (int i = 0; i < names.size(); i++) {
      if (positions.put(names.get(i), i) != null) {
        throw new IllegalArgumentException(
            "joint estimate: the name " + names.get(i) + " stands twice");
      }
    }
    return positions;
  }

  /**
   * Values and their covariance, copied.
   *
   * @param covariance symmetric, in the products of the values' units; only its mean with its
   *     transpose is kept
   * @throws IllegalArgumentException if sizes differ, a name stands twice, a number is not finite
   *     or a variance is negative
   */
  public static JointEstimate of(List<String> names, double[] values, double[][] covariance) {
    return of(names, values, covariance, List.of());
  }

  private static JointEstimate of(
      List<String> names, double[] values, double[][] covariance, List<SharedPart> parts) {
    int size = names.size();
    if (values.length != size || covariance.length != size) {
      throw new IllegalArgumentException(
          "joint estimate: "
              + size
              + " names, "
              + values.length
              + " values, "
              + covariance.length
              + " rows of covariance; expected as many of each");
    }
    for (int i = 0; i < size; i++) {
      if (!Double.isFinite(values[i]) || covariance[i].length != size || !(covariance[i][i] >= 0)) {
        throw new IllegalArgumentException(
            "joint estimate: "
                + names.get(i)
                + " = "
                + values[i]
                + " with a row of "
                + covariance[i].length
                + " covariances; expected a finite value, "
                + size
                + " covariances and a variance of at least 0");
      }
    }
    return new JointEstimate(names, values.clone(), symmetric(names, covariance), parts);
  }

  /** Independent values, in the order of the map. */
  public static JointEstimate independent(Map<String, Estimate> estimates) {
    List<String> names = List.copyOf(estimates.keySet());
    List<Estimate> parts = List.copyOf(estimates.values());
    double[] values = new double[names.size()];
    double[][] covariance = new double[names.size()][names.size()];
    for (int i = 0; i < values.length; i++) {
      Estimate part = parts.get(i);
      values[i] = part.value();
      covariance[i][i] = part.standardUncertainty() * part.standardUncertainty();
    }
    return new JointEstimate(names, values, covariance, ownParts(parts));
  }

  private static List<SharedPart> ownParts(List<Estimate> independent) {
    List<SharedPart> own = new ArrayList<>();
    for (Origin origin : EnumSet.complementOf(EnumSet.of(Origin.SCATTER))) {
      if (independent.stream().noneMatch(one -> one.budget().variance(origin) > 0)) {
        continue;
      }
      double[][] root = new double[independent.size()][independent.size()];
      for (int i = 0; i < root.length; i++) {
        root[i][i] = Math.sqrt(independent.get(i).budget().variance(origin));
      }
      own.add(new SharedPart(origin, root));
    }
    return own;
  }

  private static double[][] symmetric(List<String> names, double[][] covariance) {
    int size = covariance.length;
    double[][] copy = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        copy[i][j] = i == j ? covariance[i][i] : 0.5 * (covariance[i][j] + covariance[j][i]);
        if (!Double.isFinite(copy[i][j])) {
          throw new IllegalArgumentException(
              "joint estimate: covariance of "
                  + names.get(i)
                  + " and "
                  + names.get(j)
                  + " is not finite");
        }
      }
    }
    return copy;
  }

  /** These values together with others that are independent of them. */
  public JointEstimate with(JointEstimate independent) {
    int mine = values.length;
    int size = mine + independent.values.length;
    List<String> all = new ArrayList<>(names);
    all.addAll(independent.names);
    double[] allValues = new double[size];
    double[][] allCovariance = new double[size][size];
    for (int i = 0; i < size; i++) {
      JointEstimate part = i < mine ? this : independent;
      int start = i < mine ? 0 : mine;
      allValues[i] = part.values[i - start];
      System.arraycopy(part.covariance[i - start], 0, allCovariance[i], start, part.values.length);
    }
    List<SharedPart> allParts = new ArrayList<>();
    parts.forEach(part -> allParts.add(part.among(0, size - mine)));
    independent.parts.forEach(part -> allParts.add(part.among(mine, 0)));
    return new JointEstimate(all, allValues, allCovariance, allParts);
  }

  /** Other values with the same names and covariance. */
  public JointEstimate withValues(double[] others) {
    if (others.length != values.length || !Arrays.stream(others).allMatch(Double::isFinite)) {
      return of(names, others, covariance, parts);
    }
    return new JointEstimate(names, positions, others.clone(), covariance, parts);
  }

  /**
   * The same values, less well known by errors of their own.
   *
   * @param root R, a row for each value and a column for each error of standard deviation 1: R R'
   *     is added to the covariance
   */
  public JointEstimate widened(double[][] root, Origin origin) {
    double[][] sum = new double[values.length][values.length];
    for (int i = 0; i < values.length; i++) {
      for (int j = 0; j < values.length; j++) {
        sum[i][j] = covariance[i][j];
        for (int k = 0; k < root[i].length; k++) {
          sum[i][j] += root[i][k] * root[j][k];
        }
      }
    }
    return of(names, values, sum, parts).known(root, origin);
  }

  /**
   * The same values and covariance, a part of it known by its origin.
   *
   * @param root R, a row for each value and a column for each error of standard deviation 1: R R'
   *     is part of the covariance
   */
  public JointEstimate known(double[][] root, Origin origin) {
    List<SharedPart> more = new ArrayList<>(parts);
    more.add(new SharedPart(origin, root));
    return new JointEstimate(names, positions, values, covariance, more);
  }

  /** Names in order. */
  public List<String> names() {
    return names;
  }

  /** Place of each name in their order. */
  public Map<String, Integer> positions() {
    return Collections.unmodifiableMap(positions);
  }

  /** Value of one of the names. */
  public double value(String name) {
    return values[position(name)];
  }

  /** Value and standard uncertainty of one of the names. */
  public Estimate estimate(String name) {
    return quantity(name).estimate();
  }

  /** Covariance of two of the names; the variance when both are the same. */
  public double covariance(String first, String second) {
    return covariance[position(first)][position(second)];
  }

  /** Correlation coefficient of two of the names; 0 when either is exact. */
  public double correlation(String first, String second) {
    return quantity(first).correlationWith(quantity(second));
  }

  /** One of the values as the start of a formula. */
  public Linearised quantity(String name) {
    int i = position(name);
    double[] gradient = new double[values.length];
    gradient[i] = 1;
    return new Linearised(this, values[i], gradient);
  }

  /** One of the values less another, as the start of a formula. */
  public Linearised difference(String name, String less) {
    int i = position(name);
    int j = position(less);
    double[] gradient = new double[values.length];
    gradient[i] += 1;
    gradient[j] -= 1;
    return new Linearised(this, values[i] - values[j], gradient);
  }

  /** An exact number as part of a formula on these values. */
  public Linearised constant(double value) {
    return new Linearised(this, value, new double[values.length]);
  }

  /** Whether the name is one of these. */
  public boolean contains(String name) {
    return positions.containsKey(name);
  }

  int position(String name) {
    Integer position = positions.get(name);
    if (position == null) {
      throw new IllegalArgumentException(
          "joint estimate: no value is named " + name + "; there are " + names);
    }
    return position;
  }

  /** a' C b. */
  double product(double[] first, double[] second) {
    double sum = 0;
    for (int i = 0; i < first.length; i++) {
      if (first[i] == 0) {
        continue;
      }
      double row = 0;
      for (int j = 0; j < second.length; j++) {
        row += covariance[i][j] * second[j];
      }
      sum += first[i] * row;
    }
    return sum;
  }

  /** The variance of the combination of values with these factors, by origin. */
  Budget budget(double[] factors, double variance) {
    Budget shared = Budget.NONE;
    double scatter = variance;
    for (SharedPart part : parts) {
      Budget ofPart = part.budget(factors);
      shared = shared.plus(ofPart);
      scatter -= ofPart.variance(part.origin());
    }
    return shared.plus(Budget.ofVariance(Origin.SCATTER, Math.max(0, scatter)));
  }
}
