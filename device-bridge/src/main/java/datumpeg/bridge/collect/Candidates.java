package datumpeg.bridge.collect;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The targets that a value may be a reading of.
 *
 * @param open those still to be measured, in the order of the list
 * @param asked what is asked for
 * @param list all that the session asks for
 */
record Candidates(List<Wanted> open, @Nullable Wanted asked, List<Wanted> list, HoldRule rule) {
  private static final int MOST_ELSEWHERE = 3;

  /**
   * Best first.
   *
   * @param anyOrder whether a value finds its target by what is expected
   */
  List<Wanted> of(Delivered delivered, boolean anyOrder) {
    List<Wanted> ofKind = open.stream().filter(wanted -> wanted.takes(delivered)).toList();
    if (anyOrder) {
      List<Wanted> fitting = expected(ofKind, delivered);
      if (!fitting.isEmpty()) {
        return fitting;
      }
    }
    Wanted now = asked;
    if (now != null && ofKind.contains(now)) {
      return List.of(now);
    }
    int from = now == null ? 0 : list.indexOf(now);
    return ofKind.stream()
        .filter(wanted -> list.indexOf(wanted) > from)
        .findFirst()
        .or(() -> ofKind.stream().findFirst())
        .map(List::of)
        .orElse(List.of());
  }

  /** One target, then those the value would fit without a doubt. */
  List<Wanted> withElsewhere(Wanted first, Delivered delivered) {
    List<Wanted> choices = new ArrayList<>(List.of(first));
    List<Wanted> alike =
        open.stream()
            .filter(wanted -> !wanted.equals(first))
            .filter(wanted -> wanted.target().quantity() == first.target().quantity())
            .toList();
    choices.addAll(expected(alike, delivered).stream().limit(MOST_ELSEWHERE).toList());
    return choices;
  }

  private List<Wanted> expected(List<Wanted> targets, Delivered delivered) {
    return targets.stream()
        .filter(wanted -> wanted.expectedSi().isPresent())
        .filter(wanted -> rule.fits(wanted, delivered.valueSi()))
        .sorted(Comparator.comparingDouble(wanted -> off(wanted, delivered)))
        .toList();
  }

  private static double off(Wanted wanted, Delivered delivered) {
    return Math.abs(delivered.valueSi() - wanted.expectedSi().orElse(0));
  }
}
