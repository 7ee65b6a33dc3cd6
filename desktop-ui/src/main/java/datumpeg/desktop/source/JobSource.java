package datumpeg.desktop.source;

import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.KeptOutcome;
import java.util.List;

/**
 * An open record, as the window reads it. One thread at a time.
 *
 * <p>Every method may throw {@link datumpeg.bridge.failure.FailureException}, whose message is
 * shown.
 */
public interface JobSource extends AutoCloseable {
  /**
   * A number that changes when rows are added; cheap.
   *
   * @throws datumpeg.bridge.failure.FailureException also if the disk has turned read-only
   */
  long changeCounter();

  /**
   * A sentence on why nothing can be added to the record; empty if that is not known. Where it is,
   * the source is closed between two looks, so that others can make room or take out the disk.
   */
  String obstacle();

  /** Every job, the most recently measured first, as far as it was worked out before. */
  List<JobRow> jobs();

  /** How a listed job stands; worked out if it was not. */
  JobOverview overview(JobRow row);

  /** Every outcome of a listed job, in all its rounds, as worked out last. */
  List<KeptOutcome> outcomes(JobRow row);

  /** What the readings of a listed job come to. */
  ReducedJob reduce(JobRow row);

  @Override
  void close();

  /** Opens the record, each time afresh. */
  interface Opening {
    /**
     * @throws datumpeg.bridge.failure.FailureException if there is no record or it cannot be read
     */
    JobSource open();

    /**
     * Names the very file behind the path; differs when another file was put in its place. Empty
     * where there is no file, or the platform does not tell.
     */
    String identity();
  }
}
