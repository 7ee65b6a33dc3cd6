package datumpeg.bridge.derived;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.JobIdentity;
import datumpeg.analysis.trend.DatedOutcome;
import java.time.Instant;
import java.util.List;

/**
 * One outcome of a job, without the readings it was found from.
 *
 * @param at when its newest reading was taken
 * @param meters the instruments it was found with, by the user's names for them
 */
public record KeptOutcome(String stage, Outcome outcome, Instant at, List<String> meters) {
  public KeptOutcome {
    meters = List.copyOf(meters);
  }

  /** As one of a job's history. */
  public DatedOutcome dated(JobIdentity job) {
    return new DatedOutcome(job, stage, outcome, at, meters);
  }
}
