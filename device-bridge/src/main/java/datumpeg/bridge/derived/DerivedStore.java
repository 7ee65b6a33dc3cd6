package datumpeg.bridge.derived;

import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobSummary;
import datumpeg.bridge.record.Mark;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Keeps what was worked out of a record. Thread-safe; several processes may share one. What it
 * holds is right whenever {@link #settle} was given what follows from the record as it was at the
 * row named.
 */
public interface DerivedStore extends AutoCloseable {
  /** How far the list of jobs knows the record; {@link Mark#START} if it knows nothing. */
  Mark mark();

  List<ListedJob> jobs();

  /**
   * Takes over jobs that were touched between two marks; they are no longer settled.
   *
   * @param from how far the caller knew the record; ignored if the store knows less than that
   */
  void list(Mark from, Mark now, Collection<JobSummary> touched);

  /** Takes over the whole list; no job is settled. */
  void listAfresh(Mark now, Collection<JobSummary> all);

  /** How a job stood when it was worked out last; empty if it never was. */
  Optional<JobOverview> overview(JobKey job);

  /** The key under which a job was worked out last; empty if it never was. */
  String key(JobKey job);

  /**
   * A job as worked out.
   *
   * @param row how far the record was known before the job's rows were read
   * @param key names all that the outcomes follow from
   */
  void settle(
      JobKey job, long row, String key, JobOverview overview, Collection<KeptOutcome> outcomes);

  /** What was worked out under the job's key before holds on. */
  void settleAgain(JobKey job, long row);

  /** The outcomes of every job. */
  Map<JobKey, List<KeptOutcome>> outcomes();

  List<KeptOutcome> outcomes(JobKey job);

  @Override
  void close();
}
