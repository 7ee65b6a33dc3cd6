package datumpeg.bridge.jobs;

import datumpeg.analysis.reduce.Reduction;
import datumpeg.bridge.derived.DerivedStore;
import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.KeptOutcome;
import datumpeg.bridge.derived.ListedJob;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.IntegrityException;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.record.Growth;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.JobSummary;
import datumpeg.bridge.record.Mark;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.JobRevisionEntry;
import java.io.File;
import java.net.URISyntaxException;
import java.security.CodeSource;
import java.util.List;
import java.util.Optional;
import java.util.StringJoiner;

/**
 * The jobs of a record with what was worked out of them, kept so that a job is worked out again
 * only when something it follows from is another: its newest job file, its readings in force, what
 * was moved, the limits and the analysis. One thread at a time.
 */
public final class DerivedJobs {
  private final SiteRecord record;
  private final DerivedStore store;
  private Mark known;
  private Optional<JobWork> last = Optional.empty();

  public DerivedJobs(SiteRecord record, DerivedStore store) {
    this.record = record;
    this.store = store;
    this.known = store.mark();
  }

  /**
   * Names the analysis and the limits of this program. Two builds differ even when their versions
   * do not.
   */
  public static String basis() {
    return build(Reduction.class) + " " + build(JobFile.class);
  }

  private static String build(Class<?> type) {
    try {
      CodeSource source = type.getProtectionDomain().getCodeSource();
      File file = new File(source.getLocation().toURI());
      String when = file.isFile() ? file.length() + "-" + file.lastModified() : newest(file);
      return file.getName() + "-" + when;
    } catch (URISyntaxException | IllegalArgumentException e) {
      return "unknown";
    }
  }

  /** Classes that lie open, as while building: whatever was compiled last tells them apart. */
  private static String newest(File folder) {
    long newest = folder.lastModified();
    File[] inside = folder.listFiles();
    for (File file : inside == null ? new File[0] : inside) {
      String below = file.isDirectory() ? newest(file) : Long.toString(file.lastModified());
      newest = Math.max(newest, Long.parseLong(below));
    }
    return Long.toString(newest);
  }

  /** Every job, as far as it is worked out; costs as much as was added since the last time. */
  public List<ListedJob> jobs() {
    Growth growth = record.grownSince(known);
    if (!growth.continues() || known.equals(Mark.START)) {
      store.listAfresh(growth.now(), record.jobs());
    } else if (!growth.now().equals(known)) {
      List<JobSummary> touched =
          growth.touched().stream().map(record::summary).flatMap(Optional::stream).toList();
      store.list(known, growth.now(), touched);
    }
    known = growth.now();
    return store.jobs();
  }

  /** Works a job out, unless what it follows from is what it was. */
  public JobOverview settle(JobKey job) {
    long row = known.row();
    JobLog log = record.log(job);
    Optional<StoredEntry<JobRevisionEntry>> file = record.newestRevision(job);
    String key = key(job, file, log);
    if (key.equals(store.key(job))) {
      store.settleAgain(job, row);
      return store.overview(job).orElseGet(() -> JobOverview.cannot(""));
    }
    try {
      return settle(work(job, file, log), row, key);
    } catch (InputException | IntegrityException e) {
      JobOverview cannot = JobOverview.cannot(String.valueOf(e.getMessage()));
      store.settle(job, row, key, cannot, List.of());
      return cannot;
    }
  }

  /**
   * Works a job out whatever is kept of it, and keeps what it comes to. Asked again for the same
   * job, it works out only what further rows change.
   */
  public JobWork work(JobKey job) {
    long row = known.row();
    JobLog log = record.log(job);
    Optional<StoredEntry<JobRevisionEntry>> file = record.newestRevision(job);
    JobWork work = work(job, file, log);
    last = Optional.of(work);
    settle(work, row, key(job, file, log));
    return work;
  }

  private JobWork work(JobKey job, Optional<StoredEntry<JobRevisionEntry>> file, JobLog log) {
    return JobWork.of(
        StoredJob.of(
                job, file.orElseThrow(() -> StoredJob.noFile(job)), log, last.map(JobWork::stored))
            .checkedBy(record.meterChecks(job.organisation())),
        last);
  }

  public List<KeptOutcome> outcomes(JobKey job) {
    return store.outcomes(job);
  }

  private JobOverview settle(JobWork work, long row, String key) {
    JobOverview overview = Overviews.of(work.stored().job(), work.findings(), work.holdPoints());
    store.settle(work.stored().key(), row, key, overview, Overviews.outcomes(work));
    return overview;
  }

  /** The digests of all that a job's outcomes follow from, as one. */
  private String key(JobKey job, Optional<StoredEntry<JobRevisionEntry>> file, JobLog log) {
    StringJoiner all = new StringJoiner("\n");
    all.add(file.map(StoredEntry::digest).orElse("no job file"));
    log.inForce().forEach(reading -> all.add(reading.digest()));
    log.moves().forEach(moved -> all.add(moved.digest()));
    log.profiles().forEach(profile -> all.add(profile.digest()));
    log.signatures().forEach(signature -> all.add(signature.digest()));
    log.acceptances().forEach(acceptance -> all.add(acceptance.digest()));
    record.meterChecks(job.organisation()).forEach(check -> all.add(check.digest()));
    return JobRevisionEntry.sha256Of(all.toString());
  }
}
