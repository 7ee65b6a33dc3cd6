package datumpeg.bridge.jobs;

import datumpeg.analysis.measuring.CheckNames;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.IntegrityException;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobSummary;
import datumpeg.bridge.record.SiteRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Every outcome of every job of a record.
 *
 * @param outcomes each job's in the order of its work
 * @param unread sentences on jobs that cannot be made sense of; they hide no other
 */
public record JobHistories(List<DatedOutcome> outcomes, List<String> unread) {
  public JobHistories {
    outcomes = List.copyOf(outcomes);
    unread = List.copyOf(unread);
  }

  /** Works out all jobs of a record. */
  public static JobHistories of(SiteRecord record) {
    List<DatedOutcome> outcomes = new ArrayList<>();
    List<String> unread = new ArrayList<>();
    for (JobSummary job : record.jobs()) {
      if (job.key().equals(JobKey.NONE)) {
        continue;
      }
      try {
        outcomes.addAll(of(StoredJob.load(record, job.key().toString())));
      } catch (InputException | IntegrityException e) {
        unread.add("The job " + job.key() + " is left out: " + e.getMessage());
      }
    }
    return new JobHistories(outcomes, unread);
  }

  /** The outcomes of one job, in all its rounds. */
  public static List<DatedOutcome> of(StoredJob stored) {
    return JobWork.of(stored).history();
  }

  /** The checks that have outcomes, in the order in which results tell them. */
  public List<String> checks() {
    Set<String> found = new TreeSet<>();
    outcomes.forEach(one -> found.add(one.outcome().check()));
    return CheckNames.ALL.stream().filter(found::contains).toList();
  }
}
