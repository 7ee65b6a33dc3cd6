package datumpeg.analysis.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class DoubtsTest {
  private static AgreementTest test(double probability, String... readings) {
    Set<String> ids = Set.of(readings);
    String text = String.join(" ", ids.stream().sorted().toList());
    return new AgreementTest(
        ids,
        probability,
        AgreementTest.Reach.NAMED,
        () -> List.of(new Note(Note.Kind.SLIP_SUSPECTED, text, List.copyOf(ids))));
  }

  private static List<String> doubted(AgreementTest... tests) {
    CheckResult result = CheckResult.of(List.of(), List.of(), List.of()).with(List.of(tests));
    return Doubts.of(List.of(result)).notes().stream().map(Note::text).toList();
  }

  @Test
  void sharesTheLevelAmongTheTestsOfAStage() {
    assertEquals(List.of("a"), doubted(test(0.04, "a")));
    assertEquals(List.of(), doubted(test(0.04, "a"), test(0.5, "b")));
    assertEquals(List.of("a"), doubted(test(0.02, "a"), test(0.5, "b")));
  }

  @Test
  void doubtsTheSecondOnceTheFirstIsCertain() {
    assertEquals(List.of("a", "b"), doubted(test(0.04, "a"), test(1e-6, "b")));
  }

  @Test
  void countsReadingsTestedTwiceOnce() {
    assertEquals(List.of("a b"), doubted(test(0.04, "a", "b"), test(0.04, "b", "a")));
  }

  @Test
  void doesNotDoubtTheWholeWhereAPartIsDoubtedByItself() {
    AgreementTest row = test(1e-6, "a", "b");
    AgreementTest frames = test(1e-5, "a", "b", "c");
    assertEquals(List.of("a b"), doubted(row, frames));
    assertEquals(List.of("a b c"), doubted(test(0.5, "a", "b"), frames));
    assertEquals(List.of("a b"), doubted(row, test(1e-5, "b", "c", "d")));
    assertEquals(List.of("a b", "c d e"), doubted(row, test(1e-5, "c", "d", "e")));
  }

  @Test
  void saysNothingOfAStageWithoutTests() {
    assertEquals(List.of(), doubted());
  }

  @Test
  void refusesWhatIsNoProbability() {
    assertThrows(IllegalArgumentException.class, () -> test(Double.NaN, "a"));
  }
}
