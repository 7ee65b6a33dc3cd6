package datumpeg.analysis.check;

import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import java.util.List;

/**
 * What was moved, and which readings that leaves behind. A reading is outdated when something it
 * stands on was moved after it was taken.
 *
 * @param moved in the order of the moves
 * @param readings all of the job, of any stage
 */
public record Rounds(List<MovedThing> moved, List<Reading> readings) {
  public Rounds {
    moved = List.copyOf(moved);
    readings = List.copyOf(readings);
  }

  /** Whether something under the reading was moved since. */
  public boolean isOutdated(Reading reading) {
    return !moved.isEmpty() && reading.round() < MovedThing.roundOf(reading.target(), moved);
  }

  /** Outdated, and what was moved has not been measured again at any stage. */
  public boolean isStale(Reading reading) {
    return isOutdated(reading)
        && readings.stream()
            .filter(other -> isKin(reading.target(), other.target()))
            .noneMatch(other -> supersedes(other, reading));
  }

  /**
   * The readings that go together: where what was moved has been measured again, the readings from
   * before the move are left out, whatever pair of points they name.
   *
   * @param network readings that one adjustment takes together
   */
  public List<Reading> current(List<Reading> network) {
    if (moved.isEmpty()) {
      return List.copyOf(network);
    }
    return network.stream()
        .filter(
            reading ->
                !isOutdated(reading)
                    || network.stream().noneMatch(other -> supersedes(other, reading)))
        .toList();
  }

  private boolean supersedes(Reading newer, Reading outdated) {
    return !isOutdated(newer)
        && movedSince(outdated).stream().anyMatch(thing -> thing.touches(newer.target()));
  }

  private List<MovedThing> movedSince(Reading reading) {
    List<MovedThing> touching =
        moved.stream().filter(thing -> thing.touches(reading.target())).toList();
    return touching.subList(Math.min(reading.round() - 1, touching.size()), touching.size());
  }

  /** One target, or two distances along one row of frames. */
  private static boolean isKin(Target one, Target other) {
    return one.equals(other)
        || (FrameRow.holds(one)
            && FrameRow.holds(other)
            && FrameRow.of(one.first()).equals(FrameRow.of(other.first())));
  }
}
