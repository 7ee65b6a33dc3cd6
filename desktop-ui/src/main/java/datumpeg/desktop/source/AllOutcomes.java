package datumpeg.desktop.source;

import datumpeg.analysis.job.JobIdentity;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.record.JobKey;
import java.util.List;
import java.util.stream.Stream;

/** The outcomes of all jobs of a record, with whose they are. */
public final class AllOutcomes {
  private AllOutcomes() {}

  /** Those that are worked out, each job's in the order of its work. */
  public static List<DatedOutcome> of(RecordState state) {
    return state.jobs().stream().flatMap(AllOutcomes::of).toList();
  }

  /** How many jobs are not worked out yet. */
  public static long waiting(RecordState state) {
    return state.jobs().stream()
        .filter(job -> job.trouble().isEmpty())
        .filter(job -> !job.settled() || job.outcomes().isEmpty())
        .count();
  }

  private static Stream<DatedOutcome> of(JobState job) {
    if (job.outcomes().isEmpty() || job.overview().isEmpty()) {
      return Stream.empty();
    }
    JobIdentity identity = identity(job.row(), job.overview().get());
    return job.outcomes().get().stream().map(kept -> kept.dated(identity));
  }

  /** A row's id is the job's, behind its organisation where that is not the local one. */
  private static JobIdentity identity(JobRow row, JobOverview overview) {
    int slash = row.id().lastIndexOf('/');
    String job = row.id().substring(slash + 1);
    JobKey key = slash < 0 ? JobKey.local(job) : new JobKey(row.id().substring(0, slash), job);
    return overview.identity(key, row.name());
  }
}
