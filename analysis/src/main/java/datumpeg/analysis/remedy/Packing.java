package datumpeg.analysis.remedy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Plates under each base that bring all seats to the level of the highest, as nearly as the plates
 * in stock allow, with the fewest plates.
 *
 * @param plates by seat, the plates to lay in metres, thickest first; none where none are needed
 * @param leftMetres by seat, what is missing (positive) or too much (negative) after packing
 */
public record Packing(Map<String, List<Double>> plates, Map<String, Double> leftMetres) {
  /** Plates are combined in steps of this. */
  private static final double STEP_METRES = 0.0001;

  private static final int UNREACHED = Integer.MAX_VALUE;

  public Packing {
    plates = Collections.unmodifiableMap(new LinkedHashMap<>(plates));
    leftMetres = Collections.unmodifiableMap(new LinkedHashMap<>(leftMetres));
  }

  /**
   * Chooses the plates.
   *
   * @param levelsMetres level by seat, up positive
   * @param stockMetres thicknesses in stock, as many of each as needed
   * @param ignoredMetres gaps up to this are left, being smaller than what the meter can see
   */
  public static Packing toTheHighest(
      Map<String, Double> levelsMetres, List<Double> stockMetres, double ignoredMetres) {
    double highest =
        levelsMetres.values().stream().mapToDouble(Double::doubleValue).max().orElse(0);
    Map<String, List<Double>> plates = new LinkedHashMap<>();
    Map<String, Double> left = new LinkedHashMap<>();
    levelsMetres.forEach(
        (seat, level) -> {
          double gap = highest - level;
          List<Double> chosen = gap <= ignoredMetres ? List.of() : choose(gap, stockMetres);
          plates.put(seat, chosen);
          left.put(seat, highest - level - chosen.stream().mapToDouble(Double::doubleValue).sum());
        });
    return new Packing(plates, left);
  }

  /** The sum nearest to the gap, with the fewest plates: change-making by dynamic programming. */
  private static List<Double> choose(double gapMetres, List<Double> stockMetres) {
    int[] stock =
        stockMetres.stream().mapToInt(plate -> (int) Math.round(plate / STEP_METRES)).toArray();
    int thinnest = java.util.Arrays.stream(stock).filter(plate -> plate > 0).min().orElse(0);
    if (thinnest == 0) {
      return List.of();
    }
    int gap = (int) Math.round(gapMetres / STEP_METRES);
    int most = gap + thinnest;
    int[] count = new int[most + 1];
    int[] last = new int[most + 1];
    for (int sum = 1; sum <= most; sum++) {
      count[sum] = UNREACHED;
      for (int plate : stock) {
        if (plate <= sum
            && plate > 0
            && count[sum - plate] != UNREACHED
            && count[sum - plate] + 1 < count[sum]) {
          count[sum] = count[sum - plate] + 1;
          last[sum] = plate;
        }
      }
    }
    return walk(nearest(count, gap), last);
  }

  private static int nearest(int[] count, int gap) {
    int best = 0;
    for (int sum = 0; sum < count.length; sum++) {
      if (count[sum] != UNREACHED && Math.abs(sum - gap) < Math.abs(best - gap)) {
        best = sum;
      }
    }
    return best;
  }

  private static List<Double> walk(int sum, int[] last) {
    List<Double> chosen = new ArrayList<>();
    for (int rest = sum; rest > 0; rest -= last[rest]) {
      chosen.add(last[rest] * STEP_METRES);
    }
    chosen.sort(Collections.reverseOrder());
    return List.copyOf(chosen);
  }

  /** Which plates under which base, in words; the empty text if no seat needs any. */
  public String words() {
    return plates.entrySet().stream()
        .filter(entry -> !entry.getValue().isEmpty())
        .map(entry -> entry.getKey() + ": " + sum(entry.getValue()))
        .collect(Collectors.joining("; "));
  }

  private static String sum(List<Double> chosen) {
    return chosen.stream()
            .map(
                plate ->
                    datumpeg.analysis.quantity.LengthDisplay.decimal(plate * 1000, 1)
                        .replaceAll("\\.0$", ""))
            .collect(Collectors.joining(" + "))
        + " mm";
  }
}
