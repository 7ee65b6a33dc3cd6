package datumpeg.analysis.check.slab;

import datumpeg.analysis.adjust.AdjustedPlan;
import datumpeg.analysis.adjust.NextMeasurement;
import datumpeg.analysis.adjust.PointPair;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The distance of the slab to take next, read as the last one was: while nothing checks the
 * distances, the one that checks them; while something is undecided, the one that helps the worst
 * point most.
 */
final class SlabNextMeasurement {
  private final AdjustedPlan plan;
  private final List<Reading> taken;
  private final StageReadings stage;

  SlabNextMeasurement(AdjustedPlan plan, List<Reading> taken, StageReadings stage) {
    this.plan = plan;
    this.taken = taken;
    this.stage = stage;
  }

  Optional<Note> note(List<Outcome> outcomes) {
    if (plan.fit().degreesOfFreedom() == 0) {
      return Optional.of(unchecked());
    }
    return outcomes.stream().anyMatch(outcome -> outcome.is(Verdict.UNDECIDED))
        ? best().map(this::reducing)
        : Optional.empty();
  }

  private Optional<NextMeasurement> best() {
    return NextMeasurement.among(plan, candidates());
  }

  private List<NextMeasurement.Candidate> candidates() {
    Reading last =
        taken.stream()
            .max(Comparator.comparing(Reading::at).thenComparing(Reading::id))
            .orElseThrow();
    List<String> names = plan.names();
    List<NextMeasurement.Candidate> candidates = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      for (int j = i + 1; j < names.size(); j++) {
        candidates.add(
            new NextMeasurement.Candidate(
                new PointPair(names.get(i), names.get(j)),
                stage.foreseen(last, plan.distance(names.get(i), names.get(j)).value())));
      }
    }
    return candidates;
  }

  private Note unchecked() {
    Optional<NextMeasurement> next = best();
    return new Note(
        next.isPresent() ? Note.Kind.NEXT_MEASUREMENT : Note.Kind.INFORMATION,
        "Nothing checks the slab's distances against each other; a slip would not show."
            + next.map(
                    best ->
                        isTaken(best)
                            ? " Measure " + name(best) + " once more."
                            : " Measure " + name(best) + " as well.")
                .orElse(""),
        List.of());
  }

  private boolean isTaken(NextMeasurement next) {
    String pair = next.pair().first() + "-" + next.pair().second();
    return taken.stream().anyMatch(reading -> reading.target().text().equals(pair));
  }

  private Note reducing(NextMeasurement next) {
    return new Note(
        Note.Kind.NEXT_MEASUREMENT,
        "Next, measure "
            + name(next)
            + (isTaken(next) ? " once more" : "")
            + ": it brings the worst point, "
            + TargetWords.pointNamed(next.point())
            + ", from ± "
            + Millimetres.of(Estimate.COVERAGE_FACTOR * next.nowMetres())
            + " to ± "
            + Millimetres.of(Estimate.COVERAGE_FACTOR * next.thenMetres())
            + ".",
        List.of());
  }

  private static String name(NextMeasurement next) {
    return TargetWords.named(next.pair().first() + "-" + next.pair().second());
  }
}
