package datumpeg.bridge.jobs;

import datumpeg.analysis.job.JobIdentity;
import datumpeg.analysis.measuring.CheckNames;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.ListedJob;
import datumpeg.bridge.record.JobKey;
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

  /** Of all jobs of a record; those that changed since they were kept are worked out again. */
  public static JobHistories of(DerivedJobs jobs) {
    List<DatedOutcome> outcomes = new ArrayList<>();
    List<String> unread = new ArrayList<>();
    for (ListedJob listed : jobs.jobs()) {
      JobKey key = listed.summary().key();
      if (key.equals(JobKey.NONE)) {
        continue;
      }
      JobOverview overview = jobs.settle(key);
      if (overview.trouble().isEmpty()) {
        JobIdentity identity = overview.identity(key, listed.summary().name());
        jobs.outcomes(key).forEach(kept -> outcomes.add(kept.dated(identity)));
      } else {
        unread.add("The job " + key + " is left out: " + overview.trouble());
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
