package datumpeg.analysis.check;

import datumpeg.analysis.stat.Holm;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which readings of a stage are doubted. A stage is tested in many places, and each place at 5 %
 * would doubt sound stages far more often than that; so the level is shared among the tests of the
 * stage ({@link Holm}), and a sound stage is doubted anywhere with 5 % at most.
 */
public final class Doubts {
  private Doubts() {}

  /**
   * The notes of the tests that fail, in the order of the tests. Readings tested twice count once,
   * and what shares readings with fewer that are doubted by themselves is not doubted again.
   */
  public static List<Note> of(List<AgreementTest> tests) {
    Map<Set<String>, AgreementTest> distinct = new LinkedHashMap<>();
    tests.forEach(test -> distinct.putIfAbsent(test.readingIds(), test));
    List<AgreementTest> shared = List.copyOf(distinct.values());
    List<Double> adjusted = Holm.adjusted(shared.stream().map(AgreementTest::probability).toList());
    List<AgreementTest> failed = new ArrayList<>();
    for (int i = 0; i < shared.size(); i++) {
      if (adjusted.get(i) < DirectValues.SIGNIFICANCE) {
        failed.add(shared.get(i));
      }
    }
    return failed.stream()
        .filter(test -> failed.stream().noneMatch(other -> isPartOf(other, test)))
        .flatMap(test -> test.doubt().get().stream())
        .toList();
  }

  /** In the main: a whole may leave readings out, such as those from before a move. */
  private static boolean isPartOf(AgreementTest part, AgreementTest whole) {
    return part.readingIds().size() < whole.readingIds().size()
        && !Collections.disjoint(part.readingIds(), whole.readingIds());
  }
}
