package datumpeg.analysis.stat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class HolmTest {
  /**
   * Seven probabilities of which the third and the last are rejected at 5 %. Source: example of
   * function Holm in the manual of the R package HDLSSkST 2.1.0 (search.r-project.org).
   */
  @Test
  void rejectsWhatThePublishedExampleRejects() {
    List<Double> adjusted = Holm.adjusted(List.of(0.50, 0.01, 0.001, 0.69, 0.02, 0.05, 0.0025));
    List<Boolean> rejected = adjusted.stream().map(p -> p < 0.05).toList();
    assertEquals(List.of(false, false, true, false, false, false, true), rejected);
  }

  /** 5 · 0.01, 4 · 0.02, 3 · 0.03; the next two may not be less. By hand. */
  @Test
  void neverLetsALargerProbabilityPassBeforeASmaller() {
    List<Double> adjusted = Holm.adjusted(List.of(0.05, 0.04, 0.03, 0.02, 0.01));
    double[] expected = {0.09, 0.09, 0.09, 0.08, 0.05};
    for (int i = 0; i < expected.length; i++) {
      assertEquals(expected[i], adjusted.get(i), 1e-15);
    }
  }

  @Test
  void leavesOneTestAloneAndNoneEmpty() {
    assertEquals(List.of(0.03), Holm.adjusted(List.of(0.03)));
    assertEquals(List.of(), Holm.adjusted(List.of()));
    assertEquals(List.of(1.0, 1.0), Holm.adjusted(List.of(0.7, 0.7)));
  }

  /** 20,000 families of eight sound tests, independent and all alike. */
  @Test
  void rejectsAnySoundTestInFiveOfAHundredFamiliesAtMost() {
    SplittableRandom random = new SplittableRandom(1);
    int independent = 0;
    int alike = 0;
    int families = 20_000;
    for (int i = 0; i < families; i++) {
      List<Double> apart = new ArrayList<>();
      for (int k = 0; k < 8; k++) {
        apart.add(random.nextDouble());
      }
      double one = random.nextDouble();
      independent += anyRejected(apart) ? 1 : 0;
      alike += anyRejected(List.of(one, one, one, one, one, one, one, one)) ? 1 : 0;
    }
    double chance = 4 * Math.sqrt(0.05 * 0.95 / families);
    assertEquals(1 - Math.pow(1 - 0.05 / 8, 8), (double) independent / families, chance);
    assertTrue((double) alike / families < 0.05 + chance);
  }

  private static boolean anyRejected(List<Double> probabilities) {
    return Holm.adjusted(probabilities).stream().anyMatch(p -> p < 0.05);
  }

  @Test
  void refusesWhatIsNoProbability() {
    assertThrows(IllegalArgumentException.class, () -> Holm.adjusted(List.of(0.5, 1.2)));
    assertThrows(IllegalArgumentException.class, () -> Holm.adjusted(List.of(Double.NaN)));
  }
}
