package datumpeg.bridge.collect;

import java.time.Duration;

/**
 * What a session does while its record takes nothing.
 *
 * @param spares where readings wait that the disk of the record does not take
 * @param pause between two tries to store what waits, and to go on with the capture
 */
public record WaitingTerms(SpareFolders spares, Duration pause) {
  public static final Duration USUAL_PAUSE = Duration.ofSeconds(5);

  public WaitingTerms {
    if (pause.isNegative() || pause.isZero()) {
      throw new IllegalArgumentException("a pause lasts longer than nothing: " + pause);
    }
  }

  public static WaitingTerms usual(SpareFolders spares) {
    return new WaitingTerms(spares, USUAL_PAUSE);
  }
}
