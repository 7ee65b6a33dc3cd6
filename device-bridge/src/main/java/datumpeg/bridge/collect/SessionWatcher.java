package datumpeg.bridge.collect;

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

  /** Not taken, and why. */
  void putAside(String why);

  /** A link is gone; so many bytes of an unfinished message were dropped with it. */
  void lost(LinkLostException loss, int droppedByteCount);
}
