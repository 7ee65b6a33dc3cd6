package datumpeg.analysis.remedy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Which frames of a row to shift along the building so that its bays come right, moving the fewest:
 * the frames that already stand right relative to each other stay.
 */
public final class Shifting {
  private Shifting() {}

  /**
   * The moves, in metres, positive toward end n.
   *
   * @param deviationsMetres by frame, actual − design position, on any common origin
   * @param ignoredMetres deviations from the frames that stay below this are left
   */
  public static Map<String, Double> moves(
      Map<String, Double> deviationsMetres, double ignoredMetres) {
    double best = 0;
    int most = -1;
    for (double candidate : deviationsMetres.values()) {
      int staying = 0;
      for (double deviation : deviationsMetres.values()) {
        staying += Math.abs(deviation - candidate) <= ignoredMetres ? 1 : 0;
      }
      if (staying > most) {
        most = staying;
        best = candidate;
      }
    }
    Map<String, Double> moves = new LinkedHashMap<>();
    for (Map.Entry<String, Double> entry : deviationsMetres.entrySet()) {
      if (Math.abs(entry.getValue() - best) > ignoredMetres) {
        moves.put(entry.getKey(), best - entry.getValue());
      }
    }
    return moves;
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
