package datumpeg.bridge.collect;

import datumpeg.analysis.quantity.Dimension;
import java.time.OffsetDateTime;

/**
 * A value that arrived, before it is anybody's reading.
 *
 * @param valueText as received or typed
 * @param unitText as given; empty when the value carries its own
 * @param dimension length or angle; of no meaning for an answer
 * @param valueSi metres or radians, under the meter profile's conventions; of an answer 1 for yes,
 *     0 for no
 * @param readAt when it arrived
 * @param meter the job's name for the instrument, empty if not known
 * @param link the connection as the person named it
 * @param rawHex the bytes it was decoded from; empty when it was typed
 * @param source where it came from, such as {@code replay FILE line 7}
 */
public record Delivered(
    String valueText,
    String unitText,
    Dimension dimension,
    double valueSi,
    OffsetDateTime readAt,
    String meter,
    String link,
    String rawHex,
    String source) {

  /** Whether it answers a question with yes or no. */
  boolean isAnswer() {
    return valueText.equals("yes") || valueText.equals("no");
  }
}
