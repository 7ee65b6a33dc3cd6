package datumpeg.analysis.slip;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/**
 * How often a planted slip is seen, and then found.
 *
 * @param seeds networks tried
 * @param seen of which the global test failed
 * @param first of which the planted slip, kind and readings, stood first
 * @param firstTwo of which it stood first or second
 * @param readingFirst of which the first suspicion named the readings that slipped, whatever kind
 */
record SlipShares(int seeds, int seen, int first, int firstTwo, int readingFirst) {
  static SlipShares of(
      BiFunction<Long, SplittableRandom, PlantedSlips.Planted> slips, int seeds, long firstSeed) {
    int seen = 0;
    int first = 0;
    int firstTwo = 0;
    int readingFirst = 0;
    for (long seed = firstSeed; seed < firstSeed + seeds; seed++) {
      PlantedSlips.Planted planted = slips.apply(seed, new SplittableRandom(seed));
      SlipFindings found = planted.searched();
      if (found.state() == SlipFindings.State.AGREES) {
        continue;
      }
      seen++;
      int place = place(planted, found.suspicions());
      first += place == 0 ? 1 : 0;
      firstTwo += place == 0 || place == 1 ? 1 : 0;
      boolean reading = !found.suspicions().isEmpty() && names(planted, found.suspicions().get(0));
      readingFirst += reading ? 1 : 0;
    }
    return new SlipShares(seeds, seen, first, firstTwo, readingFirst);
  }

  private static int place(PlantedSlips.Planted planted, List<Suspicion> suspicions) {
    for (int i = 0; i < suspicions.size(); i++) {
      Suspicion suspicion = suspicions.get(i);
      if (suspicion.slip().kind() == planted.kind() && names(planted, suspicion)) {
        return i;
      }
    }
    return -1;
  }

  private static boolean names(PlantedSlips.Planted planted, Suspicion suspicion) {
    Set<String> named = new HashSet<>(suspicion.readingIds());
    return named.containsAll(planted.ids())
        && (planted.ids().size() > 2 || named.size() == planted.ids().size());
  }
}
