package datumpeg.analysis.stat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Several tests at one shared level: with that probability at most, any of them rejects what is
 * true, however the tests depend on each other.
 *
 * <p>Source: S. Holm, A simple sequentially rejective multiple test procedure, Scandinavian Journal
 * of Statistics 6, 1979, pp. 65-70. The k-th smallest of m probabilities, times m - k + 1, is
 * compared with the level; the first that is not below it ends the rejections. Worked: 0.01 and
 * 0.03 at 5 %: 2 · 0.01 and 1 · 0.03, both rejected; Bonferroni would keep the second.
 */
public final class Holm {
  private Holm() {}

  /**
   * Adjusted probabilities: a test is rejected where its own is below the level.
   *
   * @param probabilities of the tests, each between 0 and 1
   * @return in the same order
   * @throws IllegalArgumentException if one is no probability
   */
  public static List<Double> adjusted(List<Double> probabilities) {
    for (double probability : probabilities) {
      if (!(probability >= 0 && probability <= 1)) {
        throw new IllegalArgumentException(
            "tests at a shared level: probability " + probability + ", expected between 0 and 1");
      }
    }
    int tests = probabilities.size();
    List<Double> adjusted = new ArrayList<>(Collections.nCopies(tests, 1.0));
    List<Integer> ascending =
        IntStream.range(0, tests)
            .boxed()
            .sorted(Comparator.comparingDouble(probabilities::get))
            .toList();
    double least = 0;
    for (int k = 0; k < tests; k++) {
      int test = ascending.get(k);
      least = Math.max(least, Math.min(1, (tests - k) * probabilities.get(test)));
      adjusted.set(test, least);
    }
    return adjusted;
  }
}
