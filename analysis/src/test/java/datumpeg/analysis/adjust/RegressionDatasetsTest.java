package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Linear regressions of the NIST statistical reference datasets (StRD), by the same adjustment as
 * every network. Data and certified values recalled, then held to each other: least squares of the
 * data in exact rational numbers (Python's fractions) gives the certified values to all fifteen
 * digits. Digits are −log10 of the relative error; what is reached stands at each test and in
 * docs/reference-analysis.md. Norris stands in {@link ReferenceDatasetsTest}.
 */
final class RegressionDatasetsTest {
  private static final double[] WAMPLER_ERRORS = {
    759, -2048, 2048, -2048, 2523, -2048, 2048, -2048, 1838, -2048, 2048, -2048, 1838, -2048, 2048,
    -2048, 2523, -2048, 2048, -2048, 759
  };

  private static final double[] WAMPLER_DEVIATIONS = {
    2152.32624678170,
    2363.55173469681,
    779.343524331583,
    101.475507550350,
    5.64566512170752,
    0.112324854679312
  };

  /** Deflection of a load cell under 150 000 to 3 000 000 lb, twice. */
  private static final double[] PONTIUS = {
    .11019, .21956, .32949, .43899, .54803, .65694, .76562, .87487, .98292, 1.09146, 1.20001,
    1.30822, 1.41599, 1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844, .11052, .22018,
    .32939, .43886, .54798, .65739, .76596, .87474, .98300, 1.09150, 1.20004, 1.30818, 1.41613,
    1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177, 2.16829
  };

  /** Employment, then six figures of an economy, by year. */
  private static final double[][] LONGLEY = {
    {60323, 83.0, 234289, 2356, 1590, 107608, 1947},
    {61122, 88.5, 259426, 2325, 1456, 108632, 1948},
    {60171, 88.2, 258054, 3682, 1616, 109773, 1949},
    {61187, 89.5, 284599, 3351, 1650, 110929, 1950},
    {63221, 96.2, 328975, 2099, 3099, 112075, 1951},
    {63639, 98.1, 346999, 1932, 3594, 113270, 1952},
    {64989, 99.0, 365385, 1870, 3547, 115094, 1953},
    {63761, 100.0, 363112, 3578, 3350, 116219, 1954},
    {66019, 101.2, 397469, 2904, 3048, 117388, 1955},
    {67857, 104.6, 419180, 2822, 2857, 118734, 1956},
    {68169, 108.4, 442769, 2936, 2798, 120445, 1957},
    {66513, 110.8, 444546, 4681, 2637, 121950, 1958},
    {68655, 112.6, 482704, 3813, 2552, 123366, 1959},
    {69564, 114.2, 502601, 3931, 2514, 125368, 1960},
    {69331, 115.7, 518173, 4806, 2572, 127852, 1961},
    {70551, 116.9, 554894, 4007, 2827, 130081, 1962}
  };

  private static final int EXACT = 15;

  private static Fit fitted(List<double[]> rows, double[] observed) {
    List<String> unknowns = new ArrayList<>();
    for (int j = 0; j < rows.get(0).length; j++) {
      unknowns.add("b" + j);
    }
    List<ObservationEquation> equations = new ArrayList<>();
    for (int i = 0; i < observed.length; i++) {
      Map<String, Double> design = new LinkedHashMap<>();
      for (int j = 0; j < unknowns.size(); j++) {
        design.put(unknowns.get(j), rows.get(i)[j]);
      }
      equations.add(
          new ObservationEquation(Observation.independent("l" + i, observed[i], 1), design, 0));
    }
    return LeastSquares.adjust(new LinearModel(unknowns, equations)).complete().orElseThrow();
  }

  private static double digits(double certified, double found) {
    return found == certified
        ? EXACT
        : Math.min(EXACT, -StrictMath.log10(Math.abs(found - certified) / Math.abs(certified)));
  }

  /** Fewest digits over the coefficients. */
  private static double ofCoefficients(Fit fit, double... certified) {
    double fewest = EXACT;
    for (int j = 0; j < certified.length; j++) {
      fewest = Math.min(fewest, digits(certified[j], fit.parameters().value("b" + j)));
    }
    return fewest;
  }

  /** Fewest digits over the standard deviations of coefficients and residuals. */
  private static double ofDeviations(Fit fit, double residual, double... certified) {
    double s = Math.sqrt(fit.test().orElseThrow().varianceFactor());
    double fewest = digits(residual, s);
    for (int j = 0; j < certified.length; j++) {
      double found = s * fit.parameters().estimate("b" + j).standardUncertainty();
      fewest = Math.min(fewest, digits(certified[j], found));
    }
    return fewest;
  }

  private static void assertReached(double digits, double found) {
    assertTrue(found >= digits, "reached " + found + " digits, expected " + digits);
  }

  private static List<double[]> powers(int from, int to, int degree) {
    List<double[]> rows = new ArrayList<>();
    for (int x = from; x <= to; x++) {
      double[] row = new double[degree + 1];
      row[0] = 1;
      for (int k = 1; k <= degree; k++) {
        row[k] = row[k - 1] * x;
      }
      rows.add(row);
    }
    return rows;
  }

  private static double[] values(List<double[]> rows, double base, double errors) {
    double[] values = new double[rows.size()];
    for (int i = 0; i < values.length; i++) {
      double factor = 1;
      for (double power : rows.get(i)) {
        values[i] += factor * power;
        factor *= base;
      }
      values[i] += errors * WAMPLER_ERRORS[i];
    }
    return values;
  }

  @Test
  void wamplerPolynomialsOfTheFifthDegreeWithoutErrors() {
    List<double[]> rows = powers(0, 20, 5);
    Fit one = fitted(rows, values(rows, 1, 0));
    assertReached(14, ofCoefficients(one, 1, 1, 1, 1, 1, 1));
    Fit tenth = fitted(rows, values(rows, 0.1, 0));
    assertReached(13, ofCoefficients(tenth, 1, .1, .01, .001, .0001, .00001));
  }

  /**
   * Errors of up to 2.5 thousand, 250 thousand and 25 million on coefficients of 1. All values are
   * whole numbers, exact as doubles: refinement finds what an exact solution would.
   */
  @Test
  void wamplerPolynomialsWithErrors() {
    List<double[]> rows = powers(0, 20, 5);
    double[] sizes = {1, 100, 10_000};
    for (int k = 0; k < sizes.length; k++) {
      Fit fit = fitted(rows, values(rows, 1, sizes[k]));
      double[] deviations = new double[6];
      for (int j = 0; j < deviations.length; j++) {
        deviations[j] = sizes[k] * WAMPLER_DEVIATIONS[j];
      }
      assertReached(14, ofCoefficients(fit, 1, 1, 1, 1, 1, 1));
      assertReached(13, ofDeviations(fit, sizes[k] * 2360.14502379268, deviations));
    }
  }

  @Test
  void pontius() {
    List<double[]> rows = new ArrayList<>();
    for (int i = 0; i < PONTIUS.length; i++) {
      double load = 150_000.0 * (i % 20 + 1);
      rows.add(new double[] {1, load, load * load});
    }
    Fit fit = fitted(rows, PONTIUS);
    assertReached(
        13, ofCoefficients(fit, .673565789473684e-3, .732059160401003e-6, -.316081871345029e-14));
    assertReached(
        13,
        ofDeviations(
            fit,
            .205177424076185e-3,
            .107938612033077e-3,
            .157817399981659e-9,
            .486652849992036e-16));
  }

  @Test
  void throughTheOrigin() {
    Fit one =
        fitted(
            powers(60, 70, 1).stream().map(r -> new double[] {r[1]}).toList(),
            new double[] {130, 131, 132, 133, 134, 135, 136, 137, 138, 139, 140});
    assertReached(14, ofCoefficients(one, 2.07438016528926));
    assertReached(14, ofDeviations(one, 3.56753034006338, .0165289256198347));
    Fit two =
        fitted(
            powers(4, 6, 1).stream().map(r -> new double[] {r[1]}).toList(),
            new double[] {3, 4, 4});
    assertReached(14, ofCoefficients(two, .727272727272727));
    assertReached(14, ofDeviations(two, .369274472937998, .0420827318078432));
  }

  @Test
  void longley() {
    List<double[]> rows = new ArrayList<>();
    double[] employed = new double[LONGLEY.length];
    for (int i = 0; i < employed.length; i++) {
      double[] row = LONGLEY[i].clone();
      employed[i] = row[0];
      row[0] = 1;
      rows.add(row);
    }
    Fit fit = fitted(rows, employed);
    assertReached(
        14,
        ofCoefficients(
            fit,
            -3482258.63459582,
            15.0618722713733,
            -.0358191792925910,
            -2.02022980381683,
            -1.03322686717359,
            -.0511041056535807,
            1829.15146461355));
    assertReached(
        12,
        ofDeviations(
            fit,
            304.854073561965,
            890420.383607373,
            84.9149257747669,
            .0334910077722432,
            .488399681651699,
            .214274163161675,
            .226073200069370,
            455.478499142212));
    assertEquals(9, fit.degreesOfFreedom());
  }
}
