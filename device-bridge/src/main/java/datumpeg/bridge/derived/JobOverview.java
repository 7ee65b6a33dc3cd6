package datumpeg.bridge.derived;

import datumpeg.analysis.job.JobIdentity;
import datumpeg.bridge.record.JobKey;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A job in one glance: whose it is, and how its stages stand.
 *
 * @param site where; empty if not said, as the next two
 * @param slabBy who laid the slab
 * @param stages in the order of the work
 * @param trouble a sentence on why its stages cannot be worked out; empty if they can
 */
public record JobOverview(
    String site,
    String crew,
    String slabBy,
    Optional<LocalDate> started,
    List<StageCount> stages,
    String trouble) {
  public JobOverview {
    stages = List.copyOf(stages);
  }

  /** Whose the job is, as far as it is kept. */
  public JobIdentity identity(JobKey key, String name) {
    return new JobIdentity(
        key.job(),
        key.organisation(),
        name,
        site,
        crew,
        slabBy,
        started,
        OptionalDouble.empty(),
        OptionalInt.empty());
  }

  /** Of a job that cannot be made sense of. */
  public static JobOverview cannot(String sentence) {
    return new JobOverview("", "", "", Optional.empty(), List.of(), sentence);
  }
}
