package datumpeg.bridge.link;

import java.time.Duration;

/**
 * How long to wait before each further attempt: the first pause, then twice as long each time, up
 * to the longest. Immutable.
 */
public record BackOff(Duration first, Duration longest) {
  /**
   * A quarter of a second at first, so that a plug that only shook costs nothing; at most five, so
   * that who puts the plug back need not wait. Common practice, no source.
   */
  public static final BackOff USUAL = new BackOff(Duration.ofMillis(250), Duration.ofSeconds(5));

  public BackOff {
    if (first.isNegative() || first.isZero() || longest.compareTo(first) < 0) {
      throw new IllegalArgumentException(
          "pauses must be positive and the longest not below the first, found "
              + first
              + " and "
              + longest);
    }
  }

  /**
   * The pause before an attempt.
   *
   * @param attempt counted from 1
   */
  public Duration before(int attempt) {
    Duration pause = first;
    for (int i = 1; i < attempt && pause.compareTo(longest) < 0; i++) {
      pause = pause.multipliedBy(2);
    }
    return pause.compareTo(longest) < 0 ? pause : longest;
  }
}
