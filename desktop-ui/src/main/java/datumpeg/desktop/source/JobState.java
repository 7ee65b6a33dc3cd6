package datumpeg.desktop.source;

import java.util.Optional;

/**
 * A job and what its readings come to.
 *
 * @param work what its readings come to; empty when that was not worked out yet, or cannot be
 * @param trouble a sentence on why it cannot be worked out; empty if it can
 * @param settled false while rows were added that work and trouble do not know yet
 */
public record JobState(JobRow row, Optional<ReducedJob> work, String trouble, boolean settled) {

  /** Listed for the first time. */
  static JobState listed(JobRow row) {
    return new JobState(row, Optional.empty(), "", false);
  }

  /** Listed again: what was worked out is shown on, and holds if no row of the job is new. */
  JobState listedAgain(JobRow newer) {
    boolean same = settled && newer.content().equals(row.content());
    return new JobState(newer, work, trouble, same);
  }

  static JobState workedOut(JobRow row, ReducedJob work) {
    return new JobState(row, Optional.of(work), "", true);
  }

  static JobState cannot(JobRow row, String sentence) {
    return new JobState(row, Optional.empty(), sentence, true);
  }
}
