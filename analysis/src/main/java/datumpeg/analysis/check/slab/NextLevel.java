package datumpeg.analysis.check.slab;

import datumpeg.analysis.adjust.AdjustedLevels;
import datumpeg.analysis.adjust.LevelNetwork;
import datumpeg.analysis.adjust.LevelReading;
import datumpeg.analysis.adjust.LevelSetUp;
import datumpeg.analysis.adjust.NextObservation;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The level to read next, as the last reading of its set-up was taken: while nothing checks the
 * levels, that they be read from a second set-up; while something is undecided, the point that
 * helps the worst one most.
 */
final class NextLevel {
  private final LevelNetwork network;
  private final AdjustedLevels levels;
  private final List<Reading> taken;
  private final StageReadings stage;

  NextLevel(LevelNetwork network, AdjustedLevels levels, List<Reading> taken, StageReadings stage) {
    this.network = network;
    this.levels = levels;
    this.taken = taken;
    this.stage = stage;
  }

  Optional<Note> note(List<Outcome> outcomes) {
    boolean undecided = outcomes.stream().anyMatch(outcome -> outcome.is(Verdict.UNDECIDED));
    if (levels.names().size() < 2) {
      return Optional.empty();
    }
    if (levels.fit().degreesOfFreedom() == 0) {
      return undecided ? Optional.of(unchecked()) : Optional.empty();
    }
    return undecided
        ? NextObservation.among(levels.fit(), wanted(), candidates()).map(NextLevel::reducing)
        : Optional.empty();
  }

  /** One point alone, read again, would check itself only. */
  private static Note unchecked() {
    return new Note(
        Note.Kind.NEXT_MEASUREMENT,
        "Nothing checks the levels against each other; a slip would not show. Next, set the level up"
            + " elsewhere and read the same points again: it also averages the tilt of its plane.",
        List.of());
  }

  private Map<String, Linearised> wanted() {
    Map<String, Linearised> wanted = new LinkedHashMap<>();
    levels
        .names()
        .forEach(name -> wanted.put(TargetWords.pointNamed(name), levels.linearisedLevel(name)));
    return wanted;
  }

  private List<NextObservation.Candidate> candidates() {
    List<NextObservation.Candidate> candidates = new ArrayList<>();
    for (LevelSetUp setUp : network.setUps()) {
      Reading last =
          taken.stream()
              .filter(reading -> reading.setupOrSession().equals(setUp.id()))
              .max(Comparator.comparing(Reading::at).thenComparing(Reading::id))
              .orElseThrow();
      String from = last.setup().isEmpty() ? "" : " from set-up " + last.setup();
      for (String point : levels.names()) {
        candidates.add(
            network.further(
                TargetWords.pointNamed(point) + from,
                levels,
                new LevelReading(setUp.id(), point, like(last, point))));
      }
    }
    return candidates;
  }

  /** Read as the last one, of a mark that may have been read already. */
  private Observation like(Reading last, String point) {
    Observation foreseen = stage.foreseen(last, 0);
    return taken.stream()
        .map(reading -> reading.target().first())
        .filter(name -> name.text().equals(point))
        .findFirst()
        .map(name -> stage.marked(foreseen, name, "up", 1))
        .orElse(foreseen);
  }

  private static Note reducing(NextObservation next) {
    return new Note(
        Note.Kind.NEXT_MEASUREMENT,
        "Next, read the level of "
            + next.name()
            + " once more: it brings the worst point, "
            + next.worst()
            + ", from ± "
            + Millimetres.of(Estimate.COVERAGE_FACTOR * next.now())
            + " to ± "
            + Millimetres.of(Estimate.COVERAGE_FACTOR * next.then())
            + ".",
        List.of());
  }
}
