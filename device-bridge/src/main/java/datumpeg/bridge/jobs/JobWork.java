package datumpeg.bridge.jobs;

import datumpeg.analysis.check.Rounds;
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
import java.util.stream.Collectors;
import java.util.stream.IntStream;

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
    List<Reduced> known =
        before.filter(work -> work.stored.isReducedLike(stored)).map(JobWork::reduced).stream()
            .flatMap(List::stream)
            .collect(Collectors.toCollection(ArrayList::new));
    Reduction reduction = stored.reduction();
    List<Findings> inTime = new ArrayList<>();
    for (int moves = 0; moves <= stored.moved().size(); moves++) {
      Rounds rounds = rounds(stored, moves);
      Findings findings = reduction.reduce(rounds, known);
      known.add(new Reduced(rounds, findings));
      inTime.add(findings);
    }
    Findings findings = inTime.remove(stored.moved().size());
    return new JobWork(stored, findings, inTime, stored.holdPoints(findings));
  }

  private List<Reduced> reduced() {
    List<Findings> inTime = inTime();
    return IntStream.range(0, inTime.size())
        .mapToObj(moves -> new Reduced(rounds(stored, moves), inTime.get(moves)))
        .toList();
  }

  /** What was in force when only so many things had been moved: of the last round, all. */
  private static Rounds rounds(StoredJob stored, int moves) {
    List<MovedThing> movedSoFar = stored.moved().subList(0, moves);
    return new Rounds(
        movedSoFar,
        moves == stored.moved().size()
            ? stored.readings()
            : takenBefore(stored.readings(), movedSoFar));
  }

  /** The readings of rounds that had begun when only these things had been moved. */
  private static List<Reading> takenBefore(List<Reading> readings, List<MovedThing> movedSoFar) {
    return readings.stream()
        .filter(reading -> reading.round() <= MovedThing.roundOf(reading.target(), movedSoFar))
        .toList();
  }

  /** Every outcome of every round, in the order of the work. */
  public List<DatedOutcome> history() {
    return JobHistory.of(stored.job(), inTime(), stored.readings());
  }

  private List<Findings> inTime() {
    List<Findings> inTime = new ArrayList<>(earlier);
    inTime.add(findings);
    return inTime;
  }
}
