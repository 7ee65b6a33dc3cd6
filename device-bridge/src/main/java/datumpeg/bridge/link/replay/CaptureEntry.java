package datumpeg.bridge.link.replay;

import datumpeg.bridge.frame.Bytes;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** One line of a capture below its header. */
public sealed interface CaptureEntry {

  /** Counts the lines below the header from 1, without a gap. */
  long number();

  /** By the wall clock. */
  Instant time();

  /** By a clock that never steps; only differences mean something. */
  long monotonicNanos();

  /**
   * Bytes that came from or went to a meter.
   *
   * @param link a name of the header
   * @param direction from or to the meter
   * @param channel of the link
   * @param bytes as they were
   */
  record Transfer(
      long number,
      Instant time,
      long monotonicNanos,
      String link,
      Direction direction,
      String channel,
      Bytes bytes)
      implements CaptureEntry {}

  /**
   * Something the person did.
   *
   * @param kind what
   * @param target of which target, where it has one
   * @param face 1 or 2, or null where the target has no faces
   * @param text what was typed, or a reason
   */
  record Act(
      long number,
      Instant time,
      long monotonicNanos,
      Kind kind,
      @Nullable String target,
      @Nullable Integer face,
      @Nullable String text)
      implements CaptureEntry {

    public Act {
      if (face != null && face != 1 && face != 2) {
        throw new IllegalArgumentException("a face is 1 or 2, found " + face);
      }
    }
  }

  /** From the meter or to it. */
  enum Direction {
    /** Received from the meter. */
    RX,
    /** Sent to the meter. */
    TX
  }

  /** What the person did. */
  enum Kind {
    /** The target now asked for. */
    TARGET,
    /** The reading just received is taken. */
    ACCEPT,
    SKIP,
    BACK,
    UNDO,
    /** The reading just received is kept aside and not assigned. */
    HELD,
    /** A value was typed. */
    TYPED
  }
}
