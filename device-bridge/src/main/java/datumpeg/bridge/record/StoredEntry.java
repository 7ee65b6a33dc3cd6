package datumpeg.bridge.record;

import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.Head;
import java.time.Instant;
import java.util.Comparator;
import java.util.UUID;

/**
 * An entry as it stands in the record.
 *
 * @param origin the chain, which is one session
 * @param sequence the row's number in the chain, from 1
 * @param at when it was stored; never before the row ahead of it in the chain
 * @param previous the digest of the row ahead of it; 64 zeros for the first
 * @param digest the row's own
 */
public record StoredEntry<E extends Entry>(
    UUID origin, long sequence, JobKey job, Instant at, String previous, String digest, E entry) {

  /** The order of lists: by time, then chain, then sequence. The same in every copy of a record. */
  public static final Comparator<StoredEntry<?>> BY_TIME =
      Comparator.<StoredEntry<?>, Instant>comparing(StoredEntry::at)
          .thenComparing(stored -> stored.origin().toString())
          .thenComparingLong(StoredEntry::sequence);

  /** This row as the head of its chain. */
  public Head head() {
    return new Head(origin, sequence, digest);
  }

  /**
   * The same row with its entry seen as the given kind.
   *
   * @throws ClassCastException if the entry is of another kind
   */
  public <F extends Entry> StoredEntry<F> as(Class<F> type) {
    return new StoredEntry<>(origin, sequence, job, at, previous, digest, type.cast(entry));
  }
}
