package datumpeg.analysis.check;

import datumpeg.analysis.measuring.Reading;
import java.util.List;

/**
 * The readings an outcome rests on.
 *
 * @param round the latest among them
 * @param stale whether a thing under them was moved after they were taken, and not measured since
 * @param readingIds sorted
 * @param effects what readings in doubt may have moved outcomes by
 */
public record Evidence(int round, boolean stale, List<String> readingIds, SlipEffects effects) {

  static Evidence of(List<Reading> readings, Rounds rounds, SlipEffects effects) {
    return new Evidence(
        readings.stream().mapToInt(Reading::round).max().orElse(1),
        readings.stream().anyMatch(rounds::isStale),
        readings.stream().map(Reading::id).distinct().sorted().toList(),
        effects);
  }
}
