package datumpeg.bridge.jobs;

import datumpeg.analysis.drift.DriftHistory;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.Reduction;
import datumpeg.analysis.signoff.Acceptance;
import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.analysis.signoff.Signature;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.mistake.Nearest;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.JobRevisionEntry;
import datumpeg.bridge.record.entry.MeterCheckEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A job with what was measured, as it stood in the record at one moment: the input of the analysis.
 * Immutable.
 *
 * @param revision which revision of the job file
 * @param jobDigest SHA-256 of that file's bytes
 * @param readings in force, in the order in which they were stored, those that fit the plan
 * @param moved what was moved, in order
 * @param strays readings in force that this revision of the plan has no place for
 * @param profileMeters the meters that readings name and only a meter profile describes
 * @param drift the checks of meters, of any job of the organisation
 * @param signatures of its stages, in order
 * @param acceptances of items of its stages, in order
 */
public record StoredJob(
    JobKey key,
    int revision,
    Job job,
    String jobDigest,
    List<Reading> readings,
    List<MovedThing> moved,
    List<Stray> strays,
    Map<String, Meter> profileMeters,
    DriftHistory drift,
    List<Signature> signatures,
    List<Acceptance> acceptances) {

  /**
   * A reading left out of the analysis.
   *
   * @param why a sentence
   */
  public record Stray(String readingId, String stage, String target, String why) {}

  public StoredJob {
    readings = List.copyOf(readings);
    moved = List.copyOf(moved);
    strays = List.copyOf(strays);
    profileMeters = Map.copyOf(profileMeters);
    signatures = List.copyOf(signatures);
    acceptances = List.copyOf(acceptances);
  }

  /**
   * The job by the newest revision of its file.
   *
   * @param jobName its id, or ORGANISATION/ID where several organisations share a record
   * @throws InputException if the record has no such job, or no job file of it
   */
  public static StoredJob load(SiteRecord record, String jobName) {
    JobKey key = find(record, jobName);
    return of(record, key, record.newestRevision(key).orElseThrow(() -> noFile(key)));
  }

  /**
   * The job by one revision of its file.
   *
   * @throws InputException if the record has no such job or revision
   */
  public static StoredJob load(SiteRecord record, String jobName, int revision) {
    JobKey key = find(record, jobName);
    return of(
        record,
        key,
        record.revision(key, revision).orElseThrow(() -> noRevision(record, key, revision)));
  }

  /**
   * The key of a job in the record.
   *
   * @throws InputException if the record has no such job; the message names the nearest
   */
  public static JobKey find(SiteRecord record, String jobName) {
    int slash = jobName.lastIndexOf('/');
    Optional<JobKey> found =
        slash < 0
            ? record.findJob(jobName)
            : record.jobs().stream()
                .map(summary -> summary.key())
                .filter(key -> key.organisation().equals(jobName.substring(0, slash)))
                .filter(key -> key.job().equals(jobName.substring(slash + 1)))
                .findFirst();
    return found.orElseThrow(() -> unknown(record, jobName));
  }

  private static StoredJob of(SiteRecord record, JobKey key, StoredEntry<JobRevisionEntry> stored) {
    return of(key, stored, record.log(key)).checkedBy(record.meterChecks(key.organisation()));
  }

  /** Joins a job file with the rows of its log. */
  static StoredJob of(JobKey key, StoredEntry<JobRevisionEntry> stored, JobLog log) {
    return of(key, stored, log, Optional.empty());
  }

  /**
   * The same, sooner: a file that is the one read before is not read again.
   *
   * @param before the job, or another, as it stood before
   */
  static StoredJob of(
      JobKey key, StoredEntry<JobRevisionEntry> stored, JobLog log, Optional<StoredJob> before) {
    JobRevisionEntry file = stored.entry();
    Job job =
        before
            .filter(known -> known.jobDigest.equals(file.sha256()))
            .map(StoredJob::job)
            .orElseGet(
                () ->
                    JobFile.read(
                        file.toml(), "job file of " + key + ", revision " + file.revision()));
    return of(key, file.revision(), job, file.sha256(), log);
  }

  /** The same with the checks of its meters. */
  StoredJob checkedBy(List<StoredEntry<MeterCheckEntry>> checks) {
    return new StoredJob(
        key,
        revision,
        job,
        jobDigest,
        readings,
        moved,
        strays,
        profileMeters,
        MeterChecks.history(jobAsMeasured(), checks),
        signatures,
        acceptances);
  }

  /** Joins a job with the rows of its log. */
  static StoredJob of(JobKey key, int revision, Job job, String digest, JobLog log) {
    ReadingRows rows = new ReadingRows(job);
    List<Reading> readings = new ArrayList<>();
    List<Stray> strays = new ArrayList<>();
    for (StoredEntry<ReadingEntry> stored : log.inForce()) {
      rows.take(stored, readings, strays);
    }
    List<MovedThing> moved =
        log.moves().stream().map(stored -> MovedThing.parse(stored.entry().thing())).toList();
    return new StoredJob(
        key,
        revision,
        job,
        digest,
        readings,
        moved,
        strays,
        ProfileMeters.of(job, readings, log.profiles()),
        DriftHistory.NONE,
        log.signatures().stream().map(SignOffRows::signature).toList(),
        log.acceptances().stream().map(SignOffRows::acceptance).toList());
  }

  /** The job with every meter its readings name, as far as a profile describes it. */
  public Job jobAsMeasured() {
    return job.withMeters(profileMeters);
  }

  /** What turns its readings into findings. */
  public Reduction reduction() {
    return new Reduction(jobAsMeasured(), jobDigest, drift);
  }

  /** Whether the reduction of the other is equal: only their readings and moves may differ. */
  boolean isReducedLike(StoredJob other) {
    return jobDigest.equals(other.jobDigest)
        && profileMeters.equals(other.profileMeters)
        && drift.equals(other.drift);
  }

  /** What its readings say. */
  public Findings findings() {
    return reduction().reduce(readings, moved);
  }

  /**
   * The hold point of one of the job's stages.
   *
   * @param findings what the readings come to
   */
  public HoldPoint holdPoint(Stage stage, Findings findings) {
    return HoldPoint.of(stage, findings.stage(stage.id()), readings, acceptances, signatures);
  }

  /** The hold points of all its stages, in the order of the work. */
  public List<HoldPoint> holdPoints(Findings findings) {
    return job.stages().stream().map(stage -> holdPoint(stage, findings)).toList();
  }

  private static InputException unknown(SiteRecord record, String jobName) {
    List<String> known = record.jobs().stream().map(job -> job.key().toString()).toList();
    return new InputException(
        "There is no job '" + jobName + "' in the record; " + Nearest.hint(jobName, known) + ".");
  }

  static InputException noFile(JobKey key) {
    return new InputException(
        "The record has rows of the job " + key + " but no job file; add it with 'job add'.");
  }

  private static InputException noRevision(SiteRecord record, JobKey key, int revision) {
    int newest = record.newestRevision(key).map(stored -> stored.entry().revision()).orElse(0);
    return new InputException(
        "The job " + key + " has no revision " + revision + "; its newest is " + newest + ".");
  }
}
