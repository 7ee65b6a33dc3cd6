package datumpeg.desktop.source;

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
 */
public record JobRow(
    String id, String name, Optional<Instant> lastReadAt, long readingCount, String content) {}
