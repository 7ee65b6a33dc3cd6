package datumpeg.bridge.collect;

import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.LinkUnavailableException;
import java.time.Duration;

/** Something that happened while measuring, in the order in which it is dealt with. */
sealed interface SessionEvent {

  /** Bytes came over the link of this name in the capture. */
  record Received(String link, Chunk chunk) implements SessionEvent {}

  /** A link is gone; it is tried again. */
  record Lost(String link, LinkLostException loss) implements SessionEvent {}

  /** A link could not be opened for this reason; it is tried again. */
  record Away(String link, LinkUnavailableException why) implements SessionEvent {}

  /** A link is there again, since this moment of the clock that never steps. */
  record Returned(String link, long monotonicNanos) implements SessionEvent {}

  /** Nothing came over a link for so long. */
  record Silent(String link, Duration since) implements SessionEvent {}

  /** A link came to its expected end. */
  record Ended(String link) implements SessionEvent {}

  /** The person typed a line. */
  record Typed(String line) implements SessionEvent {}

  /** The person's input ended. */
  record InputEnded() implements SessionEvent {}

  /** The session is asked to end. */
  record Stop() implements SessionEvent {}
}
