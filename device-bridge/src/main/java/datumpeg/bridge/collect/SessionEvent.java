package datumpeg.bridge.collect;

import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkLostException;

/** Something that happened while measuring, in the order in which it is dealt with. */
sealed interface SessionEvent {

  /** Bytes came over the link of this name in the capture. */
  record Received(String link, Chunk chunk) implements SessionEvent {}

  /** A link is gone. */
  record Lost(String link, LinkLostException loss) implements SessionEvent {}

  /** A link came to its expected end. */
  record Ended(String link) implements SessionEvent {}

  /** The person typed a line. */
  record Typed(String line) implements SessionEvent {}

  /** The person's input ended. */
  record InputEnded() implements SessionEvent {}
}
