package datumpeg.bridge.jobs;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.job.PlanFit;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.WrittenValue;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Rows of the record as readings of the analysis. Targets repeat, so each is looked at once. */
final class ReadingRows {
  private record Named(String stage, String quantity, String target) {}

  /** A target, or the sentence that says why it has no place in the plan. */
  private record Found(Optional<Target> target, String why) {}

  private final Job job;
  private final Map<Named, Found> found = new HashMap<>();

  ReadingRows(Job job) {
    this.job = job;
  }

  void take(
      StoredEntry<ReadingEntry> stored, List<Reading> readings, List<StoredJob.Stray> strays) {
    ReadingEntry entry = stored.entry();
    Found place =
        found.computeIfAbsent(
            new Named(entry.stage(), entry.quantity(), entry.target()), this::look);
    if (place.target.isEmpty()) {
      strays.add(stray(entry, place.why));
      return;
    }
    try {
      readings.add(reading(stored, place.target.get()));
    } catch (IllegalArgumentException e) {
      strays.add(stray(entry, String.valueOf(e.getMessage())));
    }
  }

  private Found look(Named named) {
    Optional<Stage> stage = job.stage(named.stage);
    Optional<MeasuredQuantity> quantity = MeasuredQuantity.ofText(named.quantity);
    if (stage.isEmpty()) {
      return new Found(Optional.empty(), "The job has no stage " + named.stage + ".");
    }
    if (quantity.isEmpty()) {
      return new Found(Optional.empty(), "There is no quantity " + named.quantity + ".");
    }
    try {
      Target target = Target.parse(quantity.get(), named.target);
      Optional<String> misfit = PlanFit.misfit(job, stage.get(), target);
      return new Found(
          misfit.isEmpty() ? Optional.of(target) : Optional.empty(), misfit.orElse(""));
    } catch (IllegalArgumentException e) {
      return new Found(Optional.empty(), String.valueOf(e.getMessage()));
    }
  }

  private static Reading reading(StoredEntry<ReadingEntry> stored, Target target) {
    ReadingEntry entry = stored.entry();
    return new Reading(
        entry.id().toString(),
        entry.stage(),
        target,
        entry.siValue(),
        entry.face(),
        entry.meter(),
        stored.origin().toString(),
        entry.setup(),
        entry.up().isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(Quantity.lengthMetres(entry.up())),
        entry.round(),
        entry.readAt().toInstant(),
        entry.operator(),
        entry.note(),
        Optional.of(new WrittenValue(entry.value(), entry.unit())));
  }

  private static StoredJob.Stray stray(ReadingEntry entry, String why) {
    return new StoredJob.Stray(entry.id().toString(), entry.stage(), entry.target(), why);
  }
}
