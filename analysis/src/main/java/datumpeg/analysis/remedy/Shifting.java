package datumpeg.analysis.remedy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Which frames of a row to shift along the building so that its bays come inside their limits,
 * moving the fewest, and those the least.
 *
 * <p>Neighbouring frames are shifted together by one amount, which changes only the bay before and
 * the bay after them; the amount makes the two equally wrong. Worked: bays −6.0, +18.8 and −6.5 mm
 * off come to +6.4, +6.4 and −6.5 mm when the second frame alone is shifted by 12.4 mm toward end
 * n.
 */
public final class Shifting {
  private Shifting() {}

  /**
   * The moves, in metres, positive toward end n; empty if no such shift brings every bay inside.
   *
   * @param frames in order from end 1, at least two
   * @param bays one fewer than frames
   */
  public static Map<String, Double> moves(List<String> frames, List<Bay> bays) {
    if (frames.size() != bays.size() + 1) {
      throw new IllegalArgumentException(
          frames.size()
              + " frames have "
              + bays.size()
              + " bays between them; expected one fewer bays than frames.");
    }
    Block best = null;
    for (int first = frames.size() - 1; first >= 0; first--) {
      for (int last = first; last < frames.size(); last++) {
        Block block = Block.of(first, last, bays);
        if (block.size() < frames.size()
            && block.bringsInside(bays)
            && (best == null || block.isLessWorkThan(best))) {
          best = block;
        }
      }
    }
    Map<String, Double> moves = new LinkedHashMap<>();
    if (best != null) {
      for (int i = best.first(); i <= best.last(); i++) {
        moves.put(frames.get(i), best.shiftMetres());
      }
    }
    return moves;
  }

  /**
   * One bay: actual − design spacing, and the least and greatest to leave, each limit drawn in by
   * the uncertainty.
   */
  public record Bay(double deviationMetres, double leastMetres, double mostMetres) {}

  /** Frames first … last, shifted together. */
  private record Block(int first, int last, double shiftMetres) {

    static Block of(int first, int last, List<Bay> bays) {
      boolean hasBefore = first > 0;
      boolean hasAfter = last < bays.size();
      double before = hasBefore ? bays.get(first - 1).deviationMetres() : 0;
      double after = hasAfter ? bays.get(last).deviationMetres() : 0;
      double shift = hasBefore && hasAfter ? (after - before) / 2 : after - before;
      return new Block(first, last, shift);
    }

    int size() {
      return last - first + 1;
    }

    boolean bringsInside(List<Bay> bays) {
      for (int bay = 0; bay < bays.size(); bay++) {
        double moved = bays.get(bay).deviationMetres();
        moved += bay == first - 1 ? shiftMetres : 0;
        moved -= bay == last ? shiftMetres : 0;
        if (moved < bays.get(bay).leastMetres() || moved > bays.get(bay).mostMetres()) {
          return false;
        }
      }
      return true;
    }

    boolean isLessWorkThan(Block other) {
      return size() < other.size()
          || (size() == other.size() && Math.abs(shiftMetres) < Math.abs(other.shiftMetres));
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
