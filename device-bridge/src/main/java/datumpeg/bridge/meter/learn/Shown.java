package datumpeg.bridge.meter.learn;

import datumpeg.bridge.frame.Bytes;
import java.util.List;

/**
 * One reading of the unknown meter: what came over the link, and what the display showed then.
 *
 * @param pieces in the order in which they came, since the reading before
 */
public record Shown(List<Piece> pieces, Displayed displayed) {

  /** Some bytes of one of the link's channels. */
  public record Piece(String channel, Bytes bytes) {}

  public Shown {
    pieces = List.copyOf(pieces);
  }
}
