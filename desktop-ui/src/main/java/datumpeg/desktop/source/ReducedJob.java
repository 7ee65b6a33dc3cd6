package datumpeg.desktop.source;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.signoff.HoldPoint;
import java.util.List;
import java.util.Map;

/**
 * A job with its findings.
 *
 * @param findings of all readings in force
 * @param earlier the findings as they were before each thing was moved, the oldest first; from
 *     these a trend has its earlier rounds
 * @param strays sentences on readings that this revision of the plan has no place for
 * @param holdPoints of every stage, in the order of the work
 * @param photos of its stages: their names by the stage's id
 */
public record ReducedJob(
    Job job,
    Findings findings,
    List<Findings> earlier,
    List<String> strays,
    List<HoldPoint> holdPoints,
    Map<String, List<String>> photos) {
  public ReducedJob {
    earlier = List.copyOf(earlier);
    strays = List.copyOf(strays);
    holdPoints = List.copyOf(holdPoints);
    photos = Map.copyOf(photos);
  }

  /** A job without photos. */
  public ReducedJob(
      Job job,
      Findings findings,
      List<Findings> earlier,
      List<String> strays,
      List<HoldPoint> holdPoints) {
    this(job, findings, earlier, strays, holdPoints, Map.of());
  }

  /** A job whose hold points are not known. */
  public ReducedJob(Job job, Findings findings, List<Findings> earlier, List<String> strays) {
    this(job, findings, earlier, strays, List.of());
  }
}
