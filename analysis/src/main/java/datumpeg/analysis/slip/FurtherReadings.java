package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.Fit;
import java.util.List;

/**
 * Readings that could be taken besides.
 *
 * @param candidates in the order of preference among equals
 * @param fit of the network with each candidate as if read so roughly that it changes nothing
 * @param roughStandardUncertainty of the candidates in that fit
 * @param standardUncertainty with which a candidate would be read, its independent part
 */
public record FurtherReadings(
    List<Candidate> candidates,
    Fit fit,
    double roughStandardUncertainty,
    double standardUncertainty) {
  public FurtherReadings {
    candidates = List.copyOf(candidates);
  }

  /**
   * One of them.
   *
   * @param id of its observation in the fit
   * @param target what to read, such as "slab.A1-slab.B4"
   * @param again whether it was read already, so that this would be a repeat
   */
  public record Candidate(String id, String target, boolean again) {}
}
