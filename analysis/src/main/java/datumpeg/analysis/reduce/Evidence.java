package datumpeg.analysis.reduce;

import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import java.util.List;

/**
 * The readings an outcome rests on.
 *
 * @param round the latest among them
 * @param stale whether a thing under them was moved after they were taken, and not measured since
 * @param readingIds sorted
 */
record Evidence(int round, boolean stale, List<String> readingIds) {

  static Evidence of(List<Reading> readings, Rounds rounds) {
    return new Evidence(
        readings.stream().mapToInt(Reading::round).max().orElse(1),
        readings.stream().anyMatch(rounds::isStale),
        readings.stream().map(Reading::id).distinct().sorted().toList());
  }

  /**
   * Rounds of the whole job: what was moved, and the latest round each target was measured in.
   *
   * @param moved in the order of the moves
   * @param latest the latest round by target
   */
  record Rounds(
      List<MovedThing> moved, java.util.Map<datumpeg.analysis.measuring.Target, Integer> latest) {

    static Rounds of(List<Reading> readings, List<MovedThing> moved) {
      java.util.Map<datumpeg.analysis.measuring.Target, Integer> latest = new java.util.HashMap<>();
      readings.forEach(reading -> latest.merge(reading.target(), reading.round(), Math::max));
      return new Rounds(List.copyOf(moved), latest);
    }

    boolean isStale(Reading reading) {
      return latest.getOrDefault(reading.target(), 1) < MovedThing.roundOf(reading.target(), moved);
    }
  }
}
