package datumpeg.analysis.slip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Suspicions in order: by score; those within 3.841 of the best of the rest are equals, and among
 * equals the more usual slip comes first, then the one that has to be smaller.
 *
 * @param leading how many are equals of the best
 */
record Ranking(List<Suspicion> suspicions, int leading) {
  private static final Comparator<Suspicion> AMONG_EQUALS =
      Comparator.comparing((Suspicion suspicion) -> suspicion.slip().kind())
          .thenComparingDouble(suspicion -> Math.rint(suspicion.score() * 10))
          .thenComparingDouble(Suspicion::size)
          .thenComparing(suspicion -> String.join(" ", suspicion.readingIds()));

  static Ranking of(List<Suspicion> suspicions) {
    List<Suspicion> rest = new ArrayList<>(suspicions);
    rest.sort(Comparator.comparingDouble(Suspicion::score));
    List<Suspicion> ordered = new ArrayList<>();
    int leading = 0;
    while (!rest.isEmpty()) {
      double limit = rest.get(0).score() + Suspicion.ONE_MORE_QUANTITY;
      List<Suspicion> equals =
          rest.stream().filter(s -> s.score() <= limit).sorted(AMONG_EQUALS).toList();
      leading = ordered.isEmpty() ? equals.size() : leading;
      ordered.addAll(equals);
      rest.removeAll(equals);
    }
    return new Ranking(List.copyOf(ordered), leading);
  }
}
