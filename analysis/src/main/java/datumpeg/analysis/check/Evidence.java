package datumpeg.analysis.check;

import datumpeg.analysis.measuring.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

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
    List<String> ids = new ArrayList<>(readings.size());
    int round = readings.isEmpty() ? 1 : Integer.MIN_VALUE;
    boolean stale = false;
    boolean sorted = true;
    for (Reading reading : readings) {
      sorted &= ids.isEmpty() || ids.get(ids.size() - 1).compareTo(reading.id()) < 0;
      ids.add(reading.id());
      round = Math.max(round, reading.round());
      stale = stale || rounds.isStale(reading);
    }
    return new Evidence(round, stale, List.copyOf(sorted ? ids : new TreeSet<>(ids)), effects);
  }
}
