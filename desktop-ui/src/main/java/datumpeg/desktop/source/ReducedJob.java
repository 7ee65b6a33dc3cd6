package datumpeg.desktop.source;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.reduce.Findings;
import java.util.List;

/**
 * A job with its findings.
 *
 * @param findings of all readings in force
 * @param earlier the findings as they were before each thing was moved, the oldest first; from
 *     these a trend has its earlier rounds
 * @param strays sentences on readings that this revision of the plan has no place for
 */
public record ReducedJob(Job job, Findings findings, List<Findings> earlier, List<String> strays) {
  public ReducedJob {
    earlier = List.copyOf(earlier);
    strays = List.copyOf(strays);
  }
}
