package datumpeg.analysis.slip;

import java.util.List;

/**
 * What the search is told.
 *
 * @param suspectBelow the network is doubted when its global test is less likely than this
 * @param explainFrom changed readings explain it when their global test is at least so likely
 * @param leastEdgeMetres the least offset put down to a meter's edge, end piece or hook
 * @param mostEdgeMetres the greatest
 * @param edgesMetres offsets known of the meters used, if any
 * @param staffsMetres lengths of staffs that may have been used
 */
public record SlipOptions(
    double suspectBelow,
    double explainFrom,
    double leastEdgeMetres,
    double mostEdgeMetres,
    List<Double> edgesMetres,
    List<Double> staffsMetres) {
  /** Edges from 20 to 250 mm, staffs of 2 to 5 m: common practice, no source. */
  public static final SlipOptions USUAL =
      new SlipOptions(0.05, 0.01, 0.02, 0.25, List.of(), List.of(2.0, 3.0, 4.0, 5.0));

  public SlipOptions {
    edgesMetres = List.copyOf(edgesMetres);
    staffsMetres = List.copyOf(staffsMetres);
    boolean levels = suspectBelow > 0 && suspectBelow < 1 && explainFrom > 0 && explainFrom < 1;
    if (!levels || !(leastEdgeMetres >= 0) || !(mostEdgeMetres >= leastEdgeMetres)) {
      throw new IllegalArgumentException(
          "slip search: levels "
              + suspectBelow
              + " and "
              + explainFrom
              + ", edges from "
              + leastEdgeMetres
              + " to "
              + mostEdgeMetres
              + " m; expected levels between 0 and 1 and edges in ascending order");
    }
  }

  /** The same with known edge lengths of the meters used. */
  public SlipOptions withEdges(List<Double> metres) {
    return new SlipOptions(
        suspectBelow, explainFrom, leastEdgeMetres, mostEdgeMetres, metres, staffsMetres);
  }
}
