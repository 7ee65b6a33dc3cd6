package datumpeg.analysis.reduce;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * How often a slip is suspected somewhere in one simulated stage: where there is none, and where
 * one distance, drawn among all of the stage, is wrong by a given amount. A distance that nothing
 * checks is drawn as well as any other, and does not show.
 */
final class SuspicionStudy {
  private final Job job = SimulatedSurvey.job();
  private final String stage;

  SuspicionStudy(String stage) {
    this.stage = stage;
  }

  /** In how many of so many stages a slip is suspected; the seed of each is its number. */
  int suspected(int stages, double slipMetres) {
    int suspected = 0;
    for (long seed = 1; seed <= stages; seed++) {
      List<Reading> readings = new ArrayList<>(readings(seed));
      if (slipMetres != 0) {
        plant(readings, slipMetres, new SplittableRandom(seed));
      }
      suspected += isSuspected(readings) ? 1 : 0;
    }
    return suspected;
  }

  private List<Reading> readings(long seed) {
    return SimulatedSurvey.draw(job, seed).readings().stream()
        .filter(reading -> reading.stage().equals(stage))
        .toList();
  }

  private static void plant(List<Reading> readings, double metres, SplittableRandom random) {
    List<Integer> distances = new ArrayList<>();
    for (int i = 0; i < readings.size(); i++) {
      if (readings.get(i).target().quantity() == MeasuredQuantity.DISTANCE) {
        distances.add(i);
      }
    }
    int at = distances.get(random.nextInt(distances.size()));
    double by = random.nextBoolean() ? metres : -metres;
    readings.set(at, longer(readings.get(at), by));
  }

  private static Reading longer(Reading of, double metres) {
    return new Reading(
        of.id(),
        of.stage(),
        of.target(),
        of.valueSi() + metres,
        of.face(),
        of.meter(),
        of.session(),
        of.setup(),
        of.upMetres(),
        of.round(),
        of.at(),
        of.operator(),
        of.note(),
        Optional.empty());
  }

  private boolean isSuspected(List<Reading> readings) {
    return new Reduction(job, "simulated")
        .reduce(readings, List.of()).stages().stream()
            .flatMap(of -> of.notes().stream())
            .anyMatch(note -> note.kind() == Note.Kind.SLIP_SUSPECTED);
  }
}
