package datumpeg.analysis.adjust;

import java.util.List;

/**
 * A slip the observations show.
 *
 * @param observationIds those any one of which, having slipped, would explain it about equally
 *     well; with one degree of freedom these are all that are checked
 * @param statistic largest slip statistic, without sign
 * @param probability of one at least as large among all distinguishable observations, if nothing
 *     slipped
 */
public record SuspectedSlip(List<String> observationIds, double statistic, double probability) {
  public SuspectedSlip {
    observationIds = List.copyOf(observationIds);
  }

  /** Whether it can be laid to a single observation. */
  public boolean located() {
    return observationIds.size() == 1;
  }
}
