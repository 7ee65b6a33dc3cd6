package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.json.CanonicalJson;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.Entry;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/**
 * Makes up the rows of one session, each with the digest of the row before it. Keeps nothing, so
 * that one thread may make up rows while another stores those before them.
 *
 * @param origin the session
 * @param clock what stamps the rows
 */
record Chain(UUID origin, Clock clock) {
  /** Where a chain has got to. */
  record Tip(long sequence, Instant at, String digest) {
    /** Of a chain without a row. */
    static final Tip NONE = new Tip(0, Instant.MIN, RowDigest.NO_PREVIOUS);
  }

  /** A row made up, not yet in the file. */
  record Link(RowDigest.Row row, Instant at, String digest, Entry entry) {
    Tip tip() {
      return new Tip(row.sequence(), at, digest);
    }

    StoredEntry<Entry> stored(UUID origin, JobKey job) {
      return new StoredEntry<>(origin, row.sequence(), job, at, row.previous(), digest, entry);
    }
  }

  /**
   * @throws IllegalArgumentException if an entry has no canonical form
   */
  List<Link> after(Tip end, JobKey job, List<? extends Entry> entries) {
    RowDigest digests = new RowDigest();
    String name = origin.toString();
    List<Link> links = new ArrayList<>(entries.size());
    Tip before = end;
    for (Entry entry : entries) {
      Instant at = notBefore(before.at());
      RowDigest.Row row =
          new RowDigest.Row(
              job.organisation(),
              job.job(),
              entry.kind().word(),
              name,
              before.sequence() + 1,
              Timestamps.text(at),
              CanonicalJson.text(entry.body()),
              before.digest());
      Link link = new Link(row, at, digests.of(row), entry);
      links.add(link);
      before = link.tip();
    }
    return links;
  }

  /** A clock that was set back must not bring the order by time out of the order of the chain. */
  private Instant notBefore(Instant earliest) {
    Instant now = Timestamps.toMicroseconds(clock.instant());
    return now.isBefore(earliest) ? earliest : now;
  }
}
