package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.ChangeEffects;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;

/**
 * Two slips at once, foretold in closed form. With p = d'W l and q = d'W d of each ({@link
 * ChangeEffects}), two changes of known size leave v'Pv + 2 (p1 + p2) + q11 + q22 + 2 q12; an
 * offset that may be anything is eliminated: two of them leave v'Pv - p' Q⁻¹ p. Worked: independent
 * readings with p = -10 and q = 20 each, q12 = 0, of v'Pv = 12: two known changes leave 12 - 40 +
 * 40 = 12, two offsets 12 - 2 · 100 / 20 = 2.
 *
 * <p>The work is bounded: every slip is paired with the slips that explain most by themselves, as
 * many of those as make {@link #MOST_PAIRS} pairs; on a slab of some 20 distances those are all.
 */
final class SlipPairs {
  private static final int MOST_PAIRS = 200_000;
  private static final int FEWEST_LEADERS = 20;

  /** Two offsets whose effects are as alike as this are one. */
  private static final double ONE_OFFSET = 1e-6;

  private final ChangeEffects effects;
  private final int most;

  /**
   * @param most how many pairs are kept
   */
  SlipPairs(ChangeEffects effects, int most) {
    this.effects = effects;
    this.most = most;
  }

  /** A pair and its score: v'Pv foreseen, plus 3.841 for each offset. */
  record Foreseen(Slip.Both pair, double score) {}

  /**
   * The best pairs, best first.
   *
   * @param slips best first by themselves
   * @param mostOffsets so many offsets a pair may have
   */
  List<Foreseen> best(List<Slip> slips, int mostOffsets) {
    List<Single> singles = slips.stream().map(this::single).toList();
    int leaders =
        Math.min(
            singles.size(), Math.max(FEWEST_LEADERS, MOST_PAIRS / Math.max(1, singles.size())));
    PriorityQueue<Candidate> kept =
        new PriorityQueue<>(Comparator.comparingDouble(Candidate::score).reversed());
    for (int i = 0; i < leaders; i++) {
      for (int j = i + 1; j < singles.size(); j++) {
        Single one = singles.get(i);
        Single other = singles.get(j);
        if (one.offsets() + other.offsets() <= mostOffsets) {
          double score = score(one, other);
          if (kept.size() < most || score < kept.element().score()) {
            offer(kept, new Candidate(one, other, score));
          }
        }
      }
    }
    List<Foreseen> best = new ArrayList<>();
    kept.stream()
        .sorted(Comparator.comparingDouble(Candidate::score))
        .forEach(
            c ->
                best.add(new Foreseen(new Slip.Both(c.one().slip(), c.other().slip()), c.score())));
    return best;
  }

  private void offer(PriorityQueue<Candidate> kept, Candidate candidate) {
    boolean apart = Collections.disjoint(candidate.one().ids(), candidate.other().ids());
    if (apart && Double.isFinite(candidate.score())) {
      kept.add(candidate);
      if (kept.size() > most) {
        kept.remove();
      }
    }
  }

  private record Candidate(Single one, Single other, double score) {}

  /** One slip with what it does by itself. */
  private record Single(
      Slip slip,
      Set<String> ids,
      ChangeEffects.Direction direction,
      double pull,
      double shown,
      int offsets) {}

  private Single single(Slip slip) {
    ChangeEffects.Direction direction = effects.direction(SlipTrial.direction(slip));
    Set<String> ids = new HashSet<>();
    slip.readings().forEach(reading -> ids.add(reading.id()));
    return new Single(
        slip,
        ids,
        direction,
        effects.pull(direction),
        effects.product(direction, direction),
        slip.unknownOffsets());
  }

  private double score(Single one, Single other) {
    double both = effects.product(one.direction(), other.direction());
    if (one.offsets() + other.offsets() == 0) {
      return effects.squareSum()
          + 2 * (one.pull() + other.pull())
          + one.shown()
          + other.shown()
          + 2 * both;
    }
    if (one.offsets() + other.offsets() == 2) {
      return effects.squareSum() - explained(one, other, both) + 2 * Suspicion.ONE_MORE_QUANTITY;
    }
    Single known = one.offsets() == 0 ? one : other;
    Single free = one.offsets() == 0 ? other : one;
    double pull = free.pull() + both;
    return effects.squareSum()
        + 2 * known.pull()
        + known.shown()
        - pull * pull / free.shown()
        + Suspicion.ONE_MORE_QUANTITY;
  }

  /** p' Q⁻¹ p; minus infinity for two offsets that are one. */
  private static double explained(Single one, Single other, double both) {
    double determinant = one.shown() * other.shown() - both * both;
    if (determinant <= ONE_OFFSET * one.shown() * other.shown()) {
      return Double.NEGATIVE_INFINITY;
    }
    return (one.pull() * one.pull() * other.shown()
            - 2 * one.pull() * other.pull() * both
            + other.pull() * other.pull() * one.shown())
        / determinant;
  }
}
