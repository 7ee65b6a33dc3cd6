package datumpeg.bridge.jobs;

import datumpeg.analysis.job.Job;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.JobRevisionEntry;
import java.util.List;
import java.util.Optional;

/**
 * What became of a job file that was taken in.
 *
 * @param revision the one the record now has
 * @param isNew whether it was stored now; false if the newest revision has the same bytes
 * @param strays readings taken before that this revision has no place for
 */
public record JobIntake(JobKey key, int revision, boolean isNew, List<StoredJob.Stray> strays) {
  public JobIntake {
    strays = List.copyOf(strays);
  }

  /** Stores the file as the job's next revision, unless the newest one has the same bytes. */
  public static JobIntake take(SiteRecord record, JobFile file, SessionStart start) {
    Job job = file.job();
    JobKey key = new JobKey(job.identity().organisation(), job.identity().id());
    Optional<JobRevisionEntry> newest = record.newestRevision(key).map(StoredEntry::entry);
    if (newest.isPresent() && newest.get().sha256().equals(file.sha256())) {
      return new JobIntake(key, newest.get().revision(), false, List.of());
    }
    int revision = newest.map(JobRevisionEntry::revision).orElse(0) + 1;
    try (RecordSession session = record.openSession(start)) {
      session.append(key, JobRevisionEntry.of(revision, job.identity().name(), file.text()));
    }
    StoredJob stored = StoredJob.of(key, revision, job, file.sha256(), record.log(key));
    return new JobIntake(key, revision, true, stored.strays());
  }
}
