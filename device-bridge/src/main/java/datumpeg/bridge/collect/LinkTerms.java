package datumpeg.bridge.collect;

import java.time.Duration;

/**
 * How long a session puts up with a link.
 *
 * @param silence after which it is said that nothing came; zero for never
 * @param patience for how long a session waits for links that are away when nobody can type
 */
public record LinkTerms(Duration silence, Duration patience) {
  /** Five minutes each: a walk to the van and back. Common practice, no source. */
  public static final LinkTerms USUAL = new LinkTerms(Duration.ofMinutes(5), Duration.ofMinutes(5));

  public LinkTerms {
    if (silence.isNegative() || patience.isNegative()) {
      throw new IllegalArgumentException("spans are not negative: " + silence + ", " + patience);
    }
  }
}
