package datumpeg.bridge.mistake;

/**
 * One thing that is wrong.
 *
 * @param sentence what was found and what was expected, ended by a full stop
 */
public record Mistake(Place place, String sentence) {

  /** {@code FILE:LINE:COLUMN: sentence}. */
  public String text() {
    return place.text() + ": " + sentence;
  }
}
