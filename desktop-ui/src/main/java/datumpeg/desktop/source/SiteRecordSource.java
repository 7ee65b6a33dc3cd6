package datumpeg.desktop.source;

import datumpeg.bridge.derived.DerivedStore;
import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.KeptOutcome;
import datumpeg.bridge.derived.ListedJob;
import datumpeg.bridge.jobs.DerivedJobs;
import datumpeg.bridge.jobs.JobWork;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobSummary;
import datumpeg.bridge.record.SiteRecord;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A site's record as the window reads it. One thread at a time. */
public final class SiteRecordSource implements JobSource {
  private final SiteRecord record;
  private final DerivedStore store;
  private final DerivedJobs derived;
  private final DiskWatch disk;
  private final Map<String, JobKey> keys = new HashMap<>();

  /** A source that closes the record, and what is kept of it, when it is closed. */
  public SiteRecordSource(SiteRecord record, DerivedStore store) {
    this.record = record;
    this.store = store;
    this.derived = new DerivedJobs(record, store);
    this.disk = new DiskWatch(record.file());
  }

  @Override
  public long changeCounter() {
    if (obstacle().isEmpty()) {
      disk.requireWritable();
    }
    return record.changeCounter();
  }

  @Override
  public String obstacle() {
    return record.obstacle().orElse("");
  }

  @Override
  public List<JobRow> jobs() {
    List<ListedJob> listed = derived.jobs();
    listed.forEach(job -> keys.put(job.summary().key().toString(), job.summary().key()));
    return listed.stream()
        .sorted(Comparator.comparing((ListedJob job) -> job.summary().lastAt()).reversed())
        .map(SiteRecordSource::row)
        .toList();
  }

  @Override
  public JobOverview overview(JobRow row) {
    return derived.settle(key(row));
  }

  @Override
  public List<KeptOutcome> outcomes(JobRow row) {
    return derived.outcomes(key(row));
  }

  @Override
  public ReducedJob reduce(JobRow row) {
    JobWork work = derived.work(key(row));
    StoredJob stored = work.stored();
    return new ReducedJob(
        stored.jobAsMeasured(),
        work.findings(),
        work.earlier(),
        stored.strays().stream().map(stray -> stray.target() + ": " + stray.why()).toList(),
        work.holdPoints(),
        photos(stored.key()));
  }

  private Map<String, List<String>> photos(JobKey job) {
    Map<String, List<String>> names = new HashMap<>();
    record
        .log(job)
        .photos()
        .forEach(
            photo ->
                names
                    .computeIfAbsent(photo.entry().stage(), stage -> new ArrayList<>())
                    .add(photo.entry().name()));
    return names;
  }

  @Override
  public void close() {
    store.close();
    record.close();
  }

  private JobKey key(JobRow row) {
    JobKey known = keys.get(row.id());
    return known == null ? StoredJob.find(record, row.id()) : known;
  }

  private static JobRow row(ListedJob listed) {
    JobSummary summary = listed.summary();
    String content =
        summary.revision()
            + " "
            + summary.readingCount()
            + " "
            + summary.voidCount()
            + " "
            + summary.lastAt();
    return new JobRow(
        summary.key().toString(),
        summary.name(),
        Optional.of(summary.lastAt()),
        summary.readingCount() - summary.voidCount(),
        content,
        listed.overview(),
        listed.settled());
  }
}
