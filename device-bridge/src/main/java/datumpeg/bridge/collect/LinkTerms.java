package datumpeg.bridge.collect;

import java.time.Duration;

/**
 * How long a session puts up with a link.
 *
 * @param silence after which it is said that nothing came; zero for never
 * @param patience for how long a session waits for links that are away when nobody can type
 * @param apart values of one kind that come sooner than this one behind the other, or behind a
 *     link's return, were kept back somewhere
 */
public record LinkTerms(Duration silence, Duration patience, Duration apart) {
  /**
   * Five minutes each: a walk to the van and back. A second: nobody measures two targets of one
   * kind with one meter within it. Common practice, no source.
   */
  public static final LinkTerms USUAL =
      new LinkTerms(Duration.ofMinutes(5), Duration.ofMinutes(5), Duration.ofSeconds(1));

  public LinkTerms {
    if (silence.isNegative() || patience.isNegative() || apart.isNegative()) {
      throw new IllegalArgumentException(
          "spans are not negative: " + silence + ", " + patience + ", " + apart);
    }
  }
}
