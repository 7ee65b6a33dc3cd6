package datumpeg.analysis.check;

import java.util.List;
import java.util.Set;
import java.util.function.Supplier;

/**
 * A test of whether some readings of a stage fit together. What is doubted is decided for all tests
 * of the stage together: {@link Doubts}.
 *
 * @param readingIds of the readings tested together
 * @param probability of a misfit at least as great if nothing slipped
 * @param reach what a slip among them reaches
 * @param doubt what is to be said if they are doubted; only asked for then, as it looks for slips
 */
public record AgreementTest(
    Set<String> readingIds, double probability, Reach reach, Supplier<List<Note>> doubt) {
  public AgreementTest {
    readingIds = Set.copyOf(readingIds);
    if (!(probability >= 0 && probability <= 1)) {
      throw new IllegalArgumentException(
          "test of readings: probability " + probability + ", expected between 0 and 1");
    }
  }

  /** What a slip among the readings tested reaches. */
  public enum Reach {
    /** Their values are adjusted together: whatever follows from any of them. */
    ALL,
    /** Each value follows from its own readings: what follows from those that are named. */
    NAMED
  }
}
