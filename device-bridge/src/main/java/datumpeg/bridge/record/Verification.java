package datumpeg.bridge.record;

import datumpeg.bridge.record.entry.Head;
import java.util.List;

/**
 * What a walk over the whole record found.
 *
 * @param rowCount rows read
 * @param chainCount chains they stand in
 * @param findings the first {@value #MOST_FINDINGS} at most
 * @param findingCount all of them
 * @param heads the last row of every chain, to be kept elsewhere
 */
public record Verification(
    long rowCount, int chainCount, List<Finding> findings, long findingCount, List<Head> heads) {
  public static final int MOST_FINDINGS = 1000;

  /** What no walk over the file alone can know. */
  public static final String CANNOT_KNOW =
      "This check cannot know whether the newest rows of a chain were cut off, or whether the whole"
          + " record was written anew: that shows only against a head kept elsewhere.";

  public Verification {
    findings = List.copyOf(findings);
    heads = List.copyOf(heads);
  }

  public boolean isSound() {
    return findingCount == 0;
  }
}
