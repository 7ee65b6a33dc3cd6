package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.hipparchus.dfp.Dfp;
import org.hipparchus.dfp.DfpField;
import org.hipparchus.linear.Array2DRowFieldMatrix;
import org.hipparchus.linear.FieldLUDecomposition;
import org.junit.jupiter.api.Test;

final class RefinementTest {
  /**
   * Powers of 0 … 12 to the sixth with errors far larger than the coefficients, and a shared one.
   */
  private static LinearModel hard() {
    SplittableRandom random = new SplittableRandom(11);
    List<String> unknowns = List.of("b0", "b1", "b2", "b3", "b4", "b5", "b6");
    List<ObservationEquation> equations = new ArrayList<>();
    for (int x = 0; x <= 12; x++) {
      Map<String, Double> design = new LinkedHashMap<>();
      double power = 1;
      for (String unknown : unknowns) {
        design.put(unknown, power);
        power *= x;
      }
      List<CommonPart> shared = List.of(new CommonPart("zero", x % 2 == 0 ? 0.25 : -0.5));
      equations.add(
          new ObservationEquation(
              new Observation("l" + x, random.nextInt(-1_000_000, 1_000_000), 0.5, shared),
              design,
              0));
    }
    return new LinearModel(unknowns, equations);
  }

  /** The normal equations in 80 decimal digits, shared error as an observation of 0 ± 1. */
  private static double[] exact(LinearModel model) {
    DfpField field = new DfpField(80);
    AugmentedSystem system = AugmentedSystem.of(model);
    DMatrixRMaj rows = system.weighted();
    int size = rows.numCols;
    Array2DRowFieldMatrix<Dfp> design = new Array2DRowFieldMatrix<>(field, rows.numRows, size);
    Array2DRowFieldMatrix<Dfp> right = new Array2DRowFieldMatrix<>(field, rows.numRows, 1);
    for (int i = 0; i < rows.numRows; i++) {
      for (int k = 0; k < size; k++) {
        design.setEntry(i, k, field.newDfp(rows.get(i, k)));
      }
      double observed =
          i < model.equations().size()
              ? model.equations().get(i).observation().observed() / 0.5
              : 0;
      right.setEntry(i, 0, field.newDfp(observed));
    }
    Dfp[] solved =
        new FieldLUDecomposition<>(design.transposeMultiply(design))
            .getSolver()
            .solve(design.transposeMultiply(right))
            .getColumn(0);
    double[] solution = new double[size];
    for (int k = 0; k < size; k++) {
      solution[k] = solved[k].toDouble();
    }
    return solution;
  }

  @Test
  void findsWhatEightyDigitsFind() {
    LinearModel model = hard();
    double[] exact = exact(model);
    Fit fit = LeastSquares.adjust(model).complete().orElseThrow();
    for (int k = 0; k < 7; k++) {
      assertEquals(1, fit.parameters().value("b" + k) / exact[k], 1e-13);
    }
    assertEquals(1, fit.commonEffect("zero").value() / exact[7], 1e-12);
  }

  /** A decomposition that is off by a thousandth costs passes, not digits. */
  @Test
  void correctsWhatTheDecompositionLacks() {
    LinearModel straight =
        new LinearModel(
            List.of("a", "b"),
            List.of(row("1", 3, 1, 0), row("2", 5, 1, 1), row("3", 8, 1, 2), row("4", 8, 1, 3)));
    AugmentedSystem system = AugmentedSystem.of(straight);
    DMatrixRMaj root = PositiveSystem.of(system.normalMatrix()).orElseThrow().inverseRoot();
    RootRows rows = new RootRows(root);
    Refinement good = Refinement.of(system, new RootRows(system.weightedTimes(rows)), rows);
    // mean of x 1.5, of y 6; slope 9/5, by hand; residuals 3.3, 5.1, 6.9, 8.7 less the values
    assertArrayEquals(new double[] {3.3, 1.8}, good.solution(), 1e-15);
    assertArrayEquals(new double[] {0.3, 0.1, -1.1, 0.7}, good.residuals(), 1e-15);
    root.data[0] *= 1.001;
    Refinement poor = Refinement.of(system, new RootRows(system.weightedTimes(rows)), rows);
    assertArrayEquals(good.solution(), poor.solution(), 1e-11);
  }

  private static ObservationEquation row(String id, double observed, double a, double b) {
    return new ObservationEquation(
        Observation.independent(id, observed, 1), Map.of("a", a, "b", b), 0);
  }
}
