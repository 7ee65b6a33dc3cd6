package datumpeg.analysis.reduce;

import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import java.util.List;
import java.util.Optional;

/**
 * What readings of a job were found to say, for one who reduces it again with a few more.
 *
 * @param inForce the readings
 * @param moved what had been moved, in order
 * @param findings what they say, by the same job, limits and checks of meters
 */
public record Reduced(List<Reading> inForce, List<MovedThing> moved, Findings findings) {
  public Reduced {
    inForce = List.copyOf(inForce);
    moved = List.copyOf(moved);
  }

  /**
   * A stage's findings if they are still what its readings say. Once something was moved, readings
   * of other stages tell which of them are stale, and none is taken over.
   *
   * @param ofStage its readings now, in the order in which they came
   * @param movedNow what has been moved by now
   */
  Optional<StageFindings> unchanged(
      String stage, List<Reading> ofStage, List<MovedThing> movedNow) {
    boolean same =
        moved.isEmpty()
            && movedNow.isEmpty()
            && ofStage.equals(
                inForce.stream().filter(reading -> reading.stage().equals(stage)).toList());
    return same ? findings.stage(stage) : Optional.empty();
  }
}
