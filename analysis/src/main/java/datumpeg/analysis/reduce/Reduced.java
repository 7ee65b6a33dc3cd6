package datumpeg.analysis.reduce;

import datumpeg.analysis.check.Rounds;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import java.util.List;
import java.util.Optional;

/**
 * What readings of a job were found to say, for one who reduces it again with a few more.
 *
 * @param rounds the readings, of any stage, and what had been moved
 * @param findings what they say, by the same job, limits and checks of meters
 */
public record Reduced(Rounds rounds, Findings findings) {
  /**
   * A stage's findings if they are still what its readings say: what was moved under none of them
   * says nothing about them, and other stages tell only which of them are stale.
   *
   * @param ofStage its readings now, in the order in which they came
   */
  Optional<StageFindings> unchanged(String stage, List<Reading> ofStage, Rounds now) {
    boolean same =
        ofStage.equals(ofStage(stage))
            && under(ofStage, rounds).equals(under(ofStage, now))
            && stale(ofStage, rounds).equals(stale(ofStage, now));
    return same ? findings.stage(stage) : Optional.empty();
  }

  private List<Reading> ofStage(String stage) {
    return rounds.readings().stream().filter(reading -> reading.stage().equals(stage)).toList();
  }

  private static List<MovedThing> under(List<Reading> ofStage, Rounds rounds) {
    return rounds.moved().stream()
        .filter(thing -> ofStage.stream().anyMatch(reading -> thing.touches(reading.target())))
        .toList();
  }

  private static List<Reading> stale(List<Reading> ofStage, Rounds rounds) {
    return ofStage.stream().filter(rounds::isStale).toList();
  }
}
