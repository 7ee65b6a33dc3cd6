package datumpeg.desktop.source;

import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.KeptOutcome;
import datumpeg.bridge.jobs.Overviews;
import java.util.List;
import java.util.Optional;

/**
 * A job and what its readings come to.
 *
 * @param overview how its stages stand; empty when that was not worked out yet
 * @param work all that its readings come to; only of the job on screen, empty of the others
 * @param trouble a sentence on why it cannot be worked out; empty if it can
 * @param settled false while rows were added that overview, work and trouble do not know yet
 * @param outcomes every outcome in all rounds; only while a screen asks for those of all jobs
 */
public record JobState(
    JobRow row,
    Optional<JobOverview> overview,
    Optional<ReducedJob> work,
    String trouble,
    boolean settled,
    Optional<List<KeptOutcome>> outcomes) {

  /** Listed for the first time. */
  static JobState listed(JobRow row) {
    return new JobState(
        row, row.overview(), Optional.empty(), trouble(row), row.current(), Optional.empty());
  }

  /** Listed again: what was worked out is shown on, and holds if no row of the job is new. */
  JobState listedAgain(JobRow newer) {
    boolean same = settled && newer.content().equals(row.content());
    if (newer.current() && !same) {
      return new JobState(newer, newer.overview(), work, trouble(newer), work.isEmpty(), outcomes)
          .withoutOutcomes();
    }
    return new JobState(newer, overview, work, trouble, same, outcomes);
  }

  /** No longer the job on screen. */
  JobState withoutWork() {
    return new JobState(row, overview, Optional.empty(), trouble, settled, outcomes);
  }

  JobState withoutOutcomes() {
    return new JobState(row, overview, work, trouble, settled, Optional.empty());
  }

  JobState with(List<KeptOutcome> all) {
    return new JobState(row, overview, work, trouble, settled, Optional.of(List.copyOf(all)));
  }

  JobState with(JobOverview newer) {
    return new JobState(
        row, Optional.of(newer), Optional.empty(), newer.trouble(), true, Optional.empty());
  }

  static JobState workedOut(JobRow row, ReducedJob work) {
    JobOverview overview = Overviews.of(work.job(), work.findings(), work.holdPoints());
    return new JobState(row, Optional.of(overview), Optional.of(work), "", true, Optional.empty());
  }

  static JobState cannot(JobRow row, String sentence) {
    return new JobState(row, Optional.empty(), Optional.empty(), sentence, true, Optional.empty());
  }

  private static String trouble(JobRow row) {
    return row.overview().map(JobOverview::trouble).orElse("");
  }
}
