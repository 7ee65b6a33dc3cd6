package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.GlobalTest;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a slip search found. A list of suspicions: no reading was dropped or corrected.
 *
 * @param state how it ended
 * @param test the global test of the readings as they are; empty without redundancy
 * @param suspicions best first; if nothing explains the readings, the slips that explain a part
 * @param inseparable how many of the first suspicions the readings cannot tell apart
 * @param next a reading that would tell them apart, where they lie in different readings; if
 *     nothing explains them for want of redundancy, one that would help to find two slips
 * @param tried how many slips were looked at
 */
public record SlipFindings(
    State state,
    Optional<GlobalTest> test,
    List<Suspicion> suspicions,
    int inseparable,
    Optional<NextReading> next,
    int tried) {

  /** How a search ends. */
  public enum State {
    /** Nothing checks the readings, or they cannot be adjusted: a slip would not show. */
    NOT_CHECKED,
    /** The readings fit together; nothing was searched. */
    AGREES,
    /** At least one slip, or two at once, explain the readings. */
    EXPLAINED,
    /** The readings do not fit together and neither one slip nor two explain it. */
    NOT_EXPLAINED
  }

  public SlipFindings {
    suspicions = List.copyOf(suspicions);
  }

  /** The suspicions that explain the readings equally well. */
  public List<Suspicion> leading() {
    return suspicions.subList(0, inseparable);
  }

  /** Whether it takes two slips at once to explain the readings. */
  public boolean takesTwo() {
    return state == State.EXPLAINED && suspicions.get(0).isOfTwo();
  }

  /** Whether all that explain it equally well lie in the same readings. */
  public boolean located() {
    return state == State.EXPLAINED
        && leading().stream().map(s -> Set.copyOf(s.readingIds())).distinct().count() == 1;
  }

  /** Detectable and not locatable: a slip is seen, and it cannot be told in which reading. */
  public boolean detectableOnly() {
    return state == State.EXPLAINED && !located();
  }
}
