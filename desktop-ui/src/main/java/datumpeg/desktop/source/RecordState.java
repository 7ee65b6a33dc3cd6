package datumpeg.desktop.source;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A record at one moment, as far as it is worked out.
 *
 * @param file where the record is
 * @param reached whether it could be read at that moment; if not, the jobs are those read before
 * @param trouble a sentence on why it could not be read or, if it could, why nothing can be added
 *     to it; empty if neither is so
 * @param readAt when the jobs were read last; empty if never
 * @param jobs the most recently measured first
 */
public record RecordState(
    String file, boolean reached, String trouble, Optional<Instant> readAt, List<JobState> jobs) {
  public RecordState {
    jobs = List.copyOf(jobs);
  }

  /** Before the first look at the record. */
  public static RecordState unread(String file) {
    return new RecordState(file, false, "", Optional.empty(), List.of());
  }

  public Optional<JobState> job(String id) {
    return jobs.stream().filter(job -> job.row().id().equals(id)).findFirst();
  }

  RecordState outOfReach(String sentence) {
    return new RecordState(file, false, sentence, readAt, jobs);
  }
}
