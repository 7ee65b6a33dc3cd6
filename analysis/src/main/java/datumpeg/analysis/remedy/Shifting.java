package datumpeg.analysis.remedy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which frames of a row to shift along the building so that its bays and its overall length come
 * inside their limits, moving the fewest, and those the least.
 *
 * <p>A frame that stays cuts the row: between two neighbours that stay, the bays can be made right
 * exactly if their sum can. So the most frames that can stay are a longest path, found exactly for
 * any number of frames. Among the ways to let that many stay, the moves of each are those that make
 * the worst bay they change least wrong, and then move least (a linear programme); the way with the
 * least total is told. Worked: bays −6.0, +18.8 and −6.5 mm off come to +6.4, +6.4 and −6.5 mm when
 * the second frame alone is shifted by 12.4 mm toward end n.
 */
public final class Shifting {
  /** More ways than this to let the same number stay are not looked at. */
  private static final int MOST_WAYS = 200;

  /** A thousandth of a millimetre: what counts as inside. */
  private static final double ROUNDING_METRES = 1e-6;

  private Shifting() {}

  /** As {@link #moves(List, List, Optional)}, without a limit for the overall length. */
  public static Map<String, Double> moves(List<String> frames, List<Bay> bays) {
    return moves(frames, bays, Optional.empty());
  }

  /**
   * The moves, in metres, positive toward end n; empty if nothing needs to move or no moves bring
   * every bay and the overall length inside.
   *
   * @param frames in order from end 1, at least two
   * @param bays one fewer than frames
   * @param overall the sum of the bays with its own limits
   */
  public static Map<String, Double> moves(
      List<String> frames, List<Bay> bays, Optional<Bay> overall) {
    if (frames.size() != bays.size() + 1) {
      throw new IllegalArgumentException(
          frames.size()
              + " frames have "
              + bays.size()
              + " bays between them; expected one fewer bays than frames.");
    }
    ShiftPlan best = null;
    for (List<Integer> staying : new StayingFrames(bays, overall).most(MOST_WAYS)) {
      Optional<ShiftPlan> plan = ShiftPlan.of(staying, bays, overall);
      if (plan.isPresent()
          && (best == null || plan.get().totalMetres() < best.totalMetres() - ROUNDING_METRES)) {
        best = plan.get();
      }
    }
    Map<String, Double> moves = new LinkedHashMap<>();
    if (best != null) {
      for (int i = 0; i < frames.size(); i++) {
        if (best.isMoved(i)) {
          moves.put(frames.get(i), best.moveMetres(i));
        }
      }
    }
    return moves;
  }

  /**
   * One bay: actual − design spacing, and the least and greatest to leave, each limit drawn in by
   * the uncertainty.
   */
  public record Bay(double deviationMetres, double leastMetres, double mostMetres) {
    boolean holds(double metres) {
      return metres >= leastMetres - ROUNDING_METRES && metres <= mostMetres + ROUNDING_METRES;
    }
  }

  /** The moves in words, such as "A3 by 18.0 mm toward end 1". */
  public static String words(Map<String, Double> moves) {
    List<String> parts = new ArrayList<>();
    moves.forEach(
        (frame, metres) ->
            parts.add(
                frame
                    + " by "
                    + Millimetres.of(metres)
                    + " toward "
                    + (metres > 0 ? "end n" : "end 1")));
    return String.join(", ", parts);
  }
}
