package datumpeg.bridge.record;

import datumpeg.bridge.record.entry.Entry;
import java.util.List;

/**
 * One opening of the record for writing. Thread-safe. Closing it closes the chain, not the record.
 *
 * <p>Both methods return only after the commit: what they return is stored for good. When they
 * throw, nothing was stored, and the session may be used further.
 */
public interface RecordSession extends AutoCloseable {

  <E extends Entry> StoredEntry<E> append(JobKey job, E entry);

  /** All entries or none, in the order given; an empty list stores nothing. */
  List<StoredEntry<Entry>> appendAll(JobKey job, List<? extends Entry> entries);

  @Override
  void close();
}
