package datumpeg.bridge.collect;

import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.record.entry.ReadingEntry;

/** Is told what a live session does, on the session's one thread. */
public interface SessionWatcher {

  /** This is asked for now; so many come after it. */
  void asking(Wanted wanted, int leftAfterThis);

  /** Stored and committed. */
  void recorded(ReadingEntry reading);

  /** Withdrawn by a void row. */
  void withdrawn(ReadingEntry reading);

  /** Waits for the person's answer. */
  void held(GuideState.Question question);

  /** The last reading waits because the record gives way, with so many others. */
  void waiting(int count, String why);

  /** What waited is stored. */
  void drained();

  /** Values without a target wait, so many for now, because the disk of their table gives way. */
  default void unassignedWaiting(int count, String why) {}

  /** The values without a target that waited are in the table. */
  default void unassignedDrained() {}

  /** Raw bytes and acts are not kept for now, and why; readings are. */
  void captureEnded(String why);

  /** Raw bytes and acts are kept again; those in between are missing. */
  default void captureGoesOn() {}

  /** Not taken, and why. */
  void putAside(String why);

  /**
   * A link is gone, and is tried again; so many bytes of an unfinished message were dropped with
   * it.
   */
  void lost(LinkLostException loss, int droppedByteCount);

  /** What became of a link, with the sentence that says so. */
  default void link(String link, LinkState state, String sentence) {
    putAside(sentence);
  }

  /** How the session stands after each event, and at its beginning. */
  default void stands(GuideState state) {}

  /** Bytes came over a link, before anything was made of them. */
  default void received(String link, Chunk chunk) {}

  /**
   * A meter said something that is no reading, such as how full its battery is.
   *
   * @param text its message
   */
  default void said(String link, NotAReading other, String text) {}
}
