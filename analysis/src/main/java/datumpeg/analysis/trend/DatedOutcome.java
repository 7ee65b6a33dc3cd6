package datumpeg.analysis.trend;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.JobIdentity;
import java.time.Instant;
import java.util.List;

/**
 * An outcome with when, where and by whom it came about.
 *
 * @param stage the stage's id
 * @param at when the last of its readings was taken
 * @param meters the instruments it was read with, by name, sorted; one that nobody named is left
 *     out
 */
public record DatedOutcome(
    JobIdentity job, String stage, Outcome outcome, Instant at, List<String> meters) {
  public DatedOutcome {
    meters = List.copyOf(meters);
  }

  /** The job's id, behind its organisation's where that is not the local one. */
  public String jobName() {
    String organisation = job.organisation();
    return organisation.isEmpty() || organisation.equals("local")
        ? job.id()
        : organisation + "/" + job.id();
  }
}
