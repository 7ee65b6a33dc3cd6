package datumpeg.analysis.report;

import datumpeg.analysis.job.Job;

/** A stage as a heading. */
final class StageTitle {
  private StageTitle() {}

  /** Its id and what it is, such as "arrival: slab check"; the id alone if the job has no title. */
  static String of(Job job, String stage) {
    return job.stage(stage)
        .filter(known -> !known.title().isBlank())
        .map(known -> stage + ": " + known.title())
        .orElse(stage);
  }
}
