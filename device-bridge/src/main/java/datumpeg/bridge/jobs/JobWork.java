package datumpeg.bridge.jobs;

import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.Reduced;
import datumpeg.analysis.reduce.Reduction;
import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.JobHistory;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A job as stored with what its readings come to.
 *
 * @param findings of all readings in force
 * @param earlier the findings as they were before each thing was moved, the oldest first
 * @param holdPoints of every stage, in the order of the work
 */
public record JobWork(
    StoredJob stored, Findings findings, List<Findings> earlier, List<HoldPoint> holdPoints) {
  public JobWork {
    earlier = List.copyOf(earlier);
    holdPoints = List.copyOf(holdPoints);
  }

  public static JobWork of(StoredJob stored) {
    return of(stored, Optional.empty());
  }

  /**
   * The same, sooner: what further rows leave as it was is taken over.
   *
   * @param before the job, or another, as it stood before
   */
  public static JobWork of(StoredJob stored, Optional<JobWork> before) {
    Reduction reduction = stored.reduction();
    List<Findings> earlier = new ArrayList<>();
    for (int moves = 0; moves < stored.moved().size(); moves++) {
      List<MovedThing> movedSoFar = stored.moved().subList(0, moves);
      earlier.add(reduction.reduce(takenBefore(stored.readings(), movedSoFar), movedSoFar));
    }
    Optional<Reduced> known =
        before.filter(work -> work.stored.isReducedLike(stored)).map(JobWork::reduced);
    Findings findings = reduction.reduce(stored.readings(), stored.moved(), known);
    return new JobWork(stored, findings, earlier, stored.holdPoints(findings));
  }

  private Reduced reduced() {
    return new Reduced(stored.readings(), stored.moved(), findings);
  }

  /** The readings of rounds that had begun when only these things had been moved. */
  private static List<Reading> takenBefore(List<Reading> readings, List<MovedThing> movedSoFar) {
    return readings.stream()
        .filter(reading -> reading.round() <= MovedThing.roundOf(reading.target(), movedSoFar))
        .toList();
  }

  /** Every outcome of every round, in the order of the work. */
  public List<DatedOutcome> history() {
    List<Findings> inTime = new ArrayList<>(earlier);
    inTime.add(findings);
    return JobHistory.of(stored.job(), inTime, stored.readings());
  }
}
