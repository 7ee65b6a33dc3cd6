package datumpeg.analysis.report;

import datumpeg.analysis.job.JobIdentity;
import java.util.Optional;

/** What is special about the page of the slab check: it is handed to whoever laid the slab. */
final class SlabPage {
  private SlabPage() {}

  static boolean is(Optional<String> stage) {
    return stage.filter("arrival"::equals).isPresent();
  }

  static String introduction(JobIdentity identity) {
    String reader = identity.slabBy().isBlank() ? "whoever laid the slab" : identity.slabBy();
    return "For "
        + reader
        + ". This page says what was measured on the slab before the frame goes up, with which"
        + " meters and how accurately, where it differs from the plan and by how much, beside the"
        + " limits as agreed for this job. It says nothing about how a difference came about. If"
        + " you find other values, please tell us, so that we can measure together.";
  }
}
