package datumpeg.bridge.collect;

import datumpeg.analysis.measuring.MeasuredQuantity;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Finds the one target that a value can be a reading of, with nobody to ask. It is found only where
 * no other target of the stage would do, measured or not, and where none was taken for it before.
 * One thread.
 */
final class Sorting {
  /** Longer than any levelling staff. Common practice, no source. */
  private static final double LONGEST_STAFF_METRES = 5;

  private final List<Wanted> all;
  private final HoldRule rule;
  private final Set<Wanted> open;

  /**
   * @param all targets of the stage
   * @param open those of them that no reading answers yet
   */
  Sorting(List<Wanted> all, List<Wanted> open, HoldRule rule) {
    this.all = List.copyOf(all);
    this.open = new HashSet<>(open);
    this.rule = rule;
  }

  /**
   * What a value may be.
   *
   * @param targets it fits, in the order of the list
   * @param found whether it can only be the first of them
   * @param why it is not found, in words
   */
  record Place(List<Wanted> targets, boolean found, String why) {
    Place {
      targets = List.copyOf(targets);
    }
  }

  Place place(Delivered delivered) {
    List<Wanted> fitting = all.stream().filter(wanted -> fits(wanted, delivered)).toList();
    if (fitting.isEmpty()) {
      return new Place(fitting, false, "it fits no target of the stage");
    }
    if (fitting.size() > 1) {
      return new Place(fitting, false, "it may be " + names(fitting));
    }
    if (!open.contains(fitting.get(0))) {
      return new Place(fitting, false, names(fitting) + " has a reading already");
    }
    return new Place(fitting, true, "");
  }

  /** A reading of the target was stored. */
  void taken(Wanted wanted) {
    open.remove(wanted);
  }

  int openCount() {
    return open.size();
  }

  private boolean fits(Wanted wanted, Delivered delivered) {
    MeasuredQuantity quantity = wanted.target().quantity();
    boolean staffOrHeight =
        quantity == MeasuredQuantity.STAFF || quantity == MeasuredQuantity.HEIGHT;
    return Collector.judge(wanted, delivered) == Offer.WAITING
        && rule.fits(wanted, delivered.valueSi())
        && !(staffOrHeight && Math.abs(delivered.valueSi()) > LONGEST_STAFF_METRES);
  }

  /** Three of them, and how many more there are. */
  private static String names(List<Wanted> targets) {
    String first =
        targets.stream()
            .limit(3)
            .map(
                wanted ->
                    wanted.target().quantity().text()
                        + " "
                        + wanted.target().text()
                        + (wanted.face() == 0 ? "" : ", face " + wanted.face()))
            .collect(Collectors.joining(" or "));
    return targets.size() > 3 ? first + " or one of " + (targets.size() - 3) + " more" : first;
  }
}
