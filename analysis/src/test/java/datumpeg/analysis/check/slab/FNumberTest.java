package datumpeg.analysis.check.slab;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.simulate.NormalDraws;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.JointEstimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class FNumberTest {
  /**
   * Bends of six profiles of a worked data sheet for E1155M, mm, step 300 mm (document 382981185 of
   * a public document share, as mirrored; the sheet's own FF cannot be seen there). Mean
   * −0.1935606, s 1.3682012 and FF 26.9417 were reckoned from them in Python: real bends, our
   * arithmetic twice.
   */
  private static final double[] PUBLISHED_MILLIMETRES = {
    .635, -1.499, -1.753, -.229, 1.575, .635, -.102, -1.549, .432, 1.651, -.457, -.711, -.381,
    -.914, -.559, -2.667, .483, .584, -1.956, 2.565, .076, .127, -.813, -.737, -.457, -1.549, 1.270,
    1.219, 1.194, -.279, 1.448, 1.422, -.381, .610, -1.651, .686, .610, -.711, .356, -1.753, 2.032,
    -1.829, -1.854, -.610, -1.372, 1.880, -.635, 1.016, -.787, 0, -.279, -1.067, -.889, .610, 1.118,
    1.067, .965, -2.667, -1.016, -2.743, -1.880, -2.921, -2.032, 3.581, .457, .610
  };

  private static List<Linearised> values(double standardUncertainty, double... metres) {
    Map<String, Estimate> estimates = new LinkedHashMap<>();
    for (int i = 0; i < metres.length; i++) {
      estimates.put("v" + i, new Estimate(metres[i], standardUncertainty));
    }
    JointEstimate joint = JointEstimate.independent(estimates);
    return estimates.keySet().stream().map(joint::quantity).toList();
  }

  private static double[] metres(double... millimetres) {
    return DoubleStream.of(millimetres).map(value -> value / 1000).toArray();
  }

  @Test
  void publishedBendsGiveTheNumberOfEitherUnitSystem() {
    List<Linearised> bends = values(0, metres(PUBLISHED_MILLIMETRES));
    assertEquals(66, bends.size());
    double metric = FNumber.of(FNumber.METRIC_FLATNESS_METRES, bends, 2).orElseThrow().value();
    double feet = FNumber.of(FNumber.FOOT_FLATNESS_METRES, bends, 2).orElseThrow().value();
    assertEquals(26.9417, metric, 5e-5);
    assertEquals(27.0064, feet, 5e-5);
  }

  /**
   * NIST StRD, univariate: certified lag-1 autocorrelations of NumAcc1 to NumAcc3 (data recalled)
   * and of Mavro.
   */
  @Test
  void correlationsAlongALineAreThoseOfReferenceData() {
    assertEquals(-0.5, lagOne(10000001, 10000003, 10000002), 1e-14);
    assertEquals(-0.999, lagOne(numAcc(0, 1.2, 1.1, 1.3)), 1e-13);
    assertEquals(-0.999, lagOne(numAcc(1_000_000, 0.2, 0.1, 0.3)), 1e-9);
    double[] mavro =
        IntStream.of(
                180, 170, 180, 190, 180, 170, 150, 140, 150, 150, 170, 180, 180, 190, 190, 210, 200,
                160, 140, 130, 130, 150, 150, 160, 150, 140, 130, 140, 150, 140, 150, 160, 150, 160,
                190, 200, 200, 210, 220, 230, 240, 250, 270, 260, 260, 260, 270, 260, 250, 240)
            .mapToDouble(n -> (200_000 + n) / 1e5)
            .toArray();
    assertEquals(0.937989183438248, lagOne(mavro), 1e-12);
  }

  private static double lagOne(double... readings) {
    double mean = DoubleStream.of(readings).average().orElseThrow();
    return FNumber.correlations(values(0, readings), mean, 1).get(0);
  }

  private static double[] numAcc(double whole, double first, double low, double high) {
    double[] readings = new double[1001];
    for (int i = 0; i < readings.length; i++) {
      readings[i] = whole + (i == 0 ? first : i % 2 == 1 ? low : high);
    }
    return readings;
  }

  /** 20 of 100 readings and 30 of 300 make 26.186147 (reckoned in Python from n/F² = Σ nᵢ/Fᵢ²). */
  @Test
  void linesCombineByTheirReadings() {
    FNumber rough = new FNumber(20, 1, 0, 100, 99);
    FNumber smooth = new FNumber(30, 1, 0, 300, 299);
    assertEquals(26.186147, FNumber.combined(List.of(rough, smooth)).value(), 5e-7);
    assertEquals(20, FNumber.combined(List.of(rough, rough)).value(), 1e-12);
    assertEquals(1 / Math.sqrt(2), FNumber.combined(List.of(rough, rough)).sampled(), 1e-12);
  }

  @Test
  void aFloorTwiceAsRoughHasHalfTheNumber() {
    double one = FNumber.of(0.1158, values(0, 0.001, -0.002, 0.003), 2).orElseThrow().value();
    double two = FNumber.of(0.1158, values(0, 0.002, -0.004, 0.006), 2).orElseThrow().value();
    assertEquals(one / 2, two, 1e-12);
  }

  @Test
  void aPerfectFloorOrTooFewValuesHaveNoNumber() {
    assertTrue(FNumber.of(0.1158, values(0, 0, 0, 0, 0), 2).isEmpty());
    assertTrue(FNumber.of(0.1158, values(0, 0.001, 0.002), 2).isEmpty());
    assertTrue(FNumber.of(0.1158, List.of(), 2).isEmpty());
    assertThrows(IllegalArgumentException.class, () -> FNumber.combined(List.of()));
  }

  /** Every value the same: no scatter, the mean alone counts. */
  @Test
  void anEvenFallCountsByItsMean() {
    assertEquals(
        0.3175 / 0.01,
        FNumber.of(0.3175, values(0, 0.01, 0.01, 0.01), 10).orElseThrow().value(),
        1e-9);
  }

  /** A level that scatters as much as the floor bends cannot find it rough with any certainty. */
  @Test
  void scatterOfTheLevelWidensTheUncertainty() {
    double[] bends = metres(PUBLISHED_MILLIMETRES);
    double still = FNumber.of(0.1158, values(0, bends), 2).orElseThrow().standardUncertainty();
    double shaky = FNumber.of(0.1158, values(0.001, bends), 2).orElseThrow().standardUncertainty();
    assertTrue(shaky > 3 * still, still + " " + shaky);
  }

  /**
   * Floors whose heights are drawn independently with sd σ have bends of sd √6·σ and rises of sd
   * √2·σ, both of mean 0. The interval holds the number of such a floor in 95 ± 3 of 100 cases.
   */
  @Test
  void theIntervalHoldsTheNumberOfTheFloorTheLinesWereDrawnFrom() {
    NormalDraws draws = new NormalDraws(11);
    int held = 0;
    int heldLevel = 0;
    int floors = 400;
    double sigma = 0.002;
    for (int floor = 0; floor < floors; floor++) {
      List<FNumber> bends = new ArrayList<>();
      List<FNumber> rises = new ArrayList<>();
      for (int line = 0; line < 4; line++) {
        double[] heights = draws(draws, 41, sigma);
        double[] bent = new double[39];
        double[] risen = new double[31];
        for (int i = 0; i < bent.length; i++) {
          bent[i] = heights[i] - 2 * heights[i + 1] + heights[i + 2];
        }
        for (int i = 0; i < risen.length; i++) {
          risen[i] = heights[i + 10] - heights[i];
        }
        FNumber.of(0.1158, values(0, bent), 2).ifPresent(bends::add);
        FNumber.of(0.3175, values(0, risen), 10).ifPresent(rises::add);
      }
      held += holds(FNumber.combined(bends), 0.1158 / (3 * Math.sqrt(6) * sigma)) ? 1 : 0;
      heldLevel += holds(FNumber.combined(rises), 0.3175 / (3 * Math.sqrt(2) * sigma)) ? 1 : 0;
    }
    assertEquals(0.95, (double) held / floors, 0.03);
    assertTrue((double) heldLevel / floors > 0.92, "FL " + heldLevel);
  }

  private static double[] draws(NormalDraws draws, int count, double sd) {
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      values[i] = draws.next(sd);
    }
    return values;
  }

  private static boolean holds(FNumber found, double truth) {
    return Math.abs(found.value() - truth) <= 2 * found.standardUncertainty();
  }
}
