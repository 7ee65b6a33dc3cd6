package datumpeg.desktop.source;

import datumpeg.bridge.derived.JobOverview;
import java.time.Instant;
import java.util.Optional;

/**
 * A job in one line.
 *
 * @param id unique in the record
 * @param lastReadAt when its newest row was stored; empty if that is not known
 * @param readingCount readings in force
 * @param content differs whenever the job's stored rows differ: what was worked out for an equal
 *     content still holds
 * @param overview how it stood when it was worked out last; empty if it never was
 * @param current whether that overview knows every row
 */
public record JobRow(
    String id,
    String name,
    Optional<Instant> lastReadAt,
    long readingCount,
    String content,
    Optional<JobOverview> overview,
    boolean current) {

  /** A job that was never worked out. */
  public JobRow(
      String id, String name, Optional<Instant> lastReadAt, long readingCount, String content) {
    this(id, name, lastReadAt, readingCount, content, Optional.empty(), false);
  }
}
