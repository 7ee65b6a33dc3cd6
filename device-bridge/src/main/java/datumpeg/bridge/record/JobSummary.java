package datumpeg.bridge.record;

import java.time.Instant;

/**
 * A job in one line.
 *
 * @param name from the newest revision; may be empty
 * @param revision the newest; 0 when the record holds rows of the job but no job file yet
 * @param readingCount all readings, the withdrawn among them
 * @param voidCount the rows that withdraw one
 * @param lastAt when its newest row was stored
 */
public record JobSummary(
    JobKey key, String name, int revision, long readingCount, long voidCount, Instant lastAt) {}
