package datumpeg.analysis.reduce;

import java.util.List;
import java.util.Optional;

/**
 * Everything that follows from a job's readings.
 *
 * @param job the job's id
 * @param jobDigest which revision of the job file it was reduced by
 * @param stages those with readings, in the order of the work
 */
public record Findings(String job, String jobDigest, List<StageFindings> stages) {
  public Findings {
    stages = List.copyOf(stages);
  }

  public Optional<StageFindings> stage(String id) {
    return stages.stream().filter(stage -> stage.stage().equals(id)).findFirst();
  }
}
