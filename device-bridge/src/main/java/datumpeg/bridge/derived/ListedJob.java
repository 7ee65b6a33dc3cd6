package datumpeg.bridge.derived;

import datumpeg.bridge.record.JobSummary;
import java.util.Optional;

/**
 * A job as the list knows it.
 *
 * @param overview as worked out last; empty if it never was
 * @param settled whether the overview knows every row of the job
 */
public record ListedJob(JobSummary summary, Optional<JobOverview> overview, boolean settled) {}
