package datumpeg.analysis.trend;

import java.util.Comparator;

/**
 * A run of points that a rule found.
 *
 * @param first its first point, from 0
 * @param last its last point
 * @param side 1 for above or rising, −1 for below or falling, 0 where there is no side
 */
public record RunSignal(RunRule rule, int first, int last, int side) {
  static final Comparator<RunSignal> IN_ORDER =
      Comparator.comparingInt(RunSignal::last)
          .thenComparingInt(RunSignal::first)
          .thenComparing(signal -> signal.rule().kind());

  /** In words, points counted from 1. */
  public String sentence() {
    String points =
        first == last ? "Point " + (first + 1) : "Points " + (first + 1) + " to " + (last + 1);
    return points + ": " + rule.words(side) + ".";
  }
}
