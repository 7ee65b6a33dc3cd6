package datumpeg.analysis.check;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.stat.Holm;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Which readings of a stage are doubted, and what that reaches. A stage is tested in many places,
 * and each place at 5 % would doubt sound stages far more often than that; so the level is shared
 * among the tests of the stage ({@link Holm}), and a sound stage is doubted anywhere with 5 % at
 * most. Immutable.
 */
public final class Doubts {
  private final List<Note> notes;
  private final List<Doubt> doubts;
  private final Set<Set<String>> failed;

  private Doubts(List<Note> notes, List<Doubt> doubts, Set<Set<String>> failed) {
    this.notes = List.copyOf(notes);
    this.doubts = List.copyOf(doubts);
    this.failed = Set.copyOf(failed);
  }

  /**
   * What of the checks' readings is doubted: by tests that fail, and by contradictions that a check
   * found itself.
   */
  public static Doubts of(List<CheckResult> results) {
    List<AgreementTest> failed =
        failed(results.stream().flatMap(result -> result.tests().stream()).toList());
    Map<String, Reading> byId = new LinkedHashMap<>();
    results.forEach(result -> result.used().forEach(reading -> byId.put(reading.id(), reading)));
    List<Note> notes = new ArrayList<>();
    List<Doubt> doubts = new ArrayList<>();
    Set<Set<String>> ids = new HashSet<>();
    for (AgreementTest test : failed) {
      ids.add(test.readingIds());
      boolean told = failed.stream().noneMatch(other -> isPartOf(other, test));
      List<Note> said = told ? test.doubt().get() : List.of();
      notes.addAll(said);
      said.forEach(note -> doubts.add(Doubt.of(note, test, byId)));
      if (!told && test.reach() == AgreementTest.Reach.ALL) {
        doubts.add(Doubt.ofAll(test));
      }
    }
    results.stream()
        .flatMap(result -> result.notes().stream())
        .filter(note -> note.kind() == Note.Kind.SLIP_SUSPECTED)
        .forEach(note -> doubts.add(Doubt.of(note, byId)));
    return new Doubts(notes, doubts, ids);
  }

  /**
   * The notes of the tests that fail, in the order of the tests. Readings tested twice count once,
   * and what shares readings with fewer that are doubted by themselves is not doubted again.
   */
  public List<Note> notes() {
    return notes;
  }

  /** What to do first about an outcome that a contradiction reaches; empty for all others. */
  public Optional<String> first(Outcome outcome) {
    return first(outcome.readingIds());
  }

  /** The same for what follows from some readings, by their ids. */
  public Optional<String> first(List<String> readingIds) {
    return doubts.isEmpty() ? Optional.empty() : firstOf(readingIds);
  }

  private Optional<String> firstOf(List<String> readingIds) {
    return doubts.stream()
        .filter(doubt -> !Collections.disjoint(doubt.reaches(), readingIds))
        .map(Doubt::first)
        .findFirst();
  }

  /** Whether any readings of a check are doubted by its own tests, or by what it found itself. */
  public boolean concern(CheckResult result) {
    return result.tests().stream().anyMatch(test -> failed.contains(test.readingIds()))
        || result.notes().stream().anyMatch(note -> note.kind() == Note.Kind.SLIP_SUSPECTED);
  }

  private static List<AgreementTest> failed(List<AgreementTest> tests) {
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
    return failed;
  }

  /** In the main: a whole may leave readings out, such as those from before a move. */
  private static boolean isPartOf(AgreementTest part, AgreementTest whole) {
    return part.readingIds().size() < whole.readingIds().size()
        && !Collections.disjoint(part.readingIds(), whole.readingIds());
  }
}
