package datumpeg.desktop.measure;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.collect.StageWork;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.desktop.measure.Sessions.TargetStand;
import datumpeg.desktop.measure.Sessions.TargetStands;
import datumpeg.desktop.text.Standing;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/** Finds how each target of a stage stands in the record. Immutable. */
final class TargetLooking {
  private final Stage stage;
  private final List<Wanted> all;
  private final Set<Wanted> open;
  private final List<Reading> readings;
  private final List<Outcome> outcomes;

  /**
   * @param round as the session asks for it
   */
  TargetLooking(StoredJob stored, Stage stage, OptionalInt round) {
    this.stage = stage;
    this.all = StageWork.all(stored, stage);
    this.open = new HashSet<>(Wanted.open(all, stored, stage.id(), round));
    this.readings =
        stored.readings().stream().filter(one -> one.stage().equals(stage.id())).toList();
    this.outcomes =
        stored.findings().stage(stage.id()).map(found -> found.outcomes()).orElse(List.of());
  }

  TargetStands stands() {
    return new TargetStands(all.stream().map(this::stand).toList(), stage.questions(), "");
  }

  private TargetStand stand(Wanted wanted) {
    List<Reading> own = readings.stream().filter(reading -> isOf(reading, wanted)).toList();
    Optional<Reading> newest = own.stream().max(Comparator.comparing(Reading::at));
    return new TargetStand(
        wanted,
        open.contains(wanted) ? Standing.NOT_MEASURED : standing(wanted, own, newest),
        newest.map(one -> OptionalDouble.of(one.valueSi())).orElse(OptionalDouble.empty()));
  }

  private static boolean isOf(Reading reading, Wanted wanted) {
    return reading.target().equals(wanted.target())
        && (wanted.face() == 0 || Math.max(1, reading.face()) == wanted.face());
  }

  private Standing standing(Wanted wanted, List<Reading> own, Optional<Reading> newest) {
    if (wanted.isQuestion()) {
      boolean yes = newest.filter(answer -> answer.valueSi() == 1).isPresent();
      return yes ? Standing.CONFORMING : Standing.NONCONFORMING;
    }
    Set<String> ids = new HashSet<>();
    own.forEach(reading -> ids.add(reading.id()));
    return outcomes.stream()
        .filter(outcome -> outcome.readingIds().stream().anyMatch(ids::contains))
        .map(Standing::of)
        .min(Comparator.naturalOrder())
        .orElse(Standing.NO_LIMIT);
  }
}
