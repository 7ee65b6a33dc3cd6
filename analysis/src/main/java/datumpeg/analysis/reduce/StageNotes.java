package datumpeg.analysis.reduce;

import datumpeg.analysis.building.PointName;
import datumpeg.analysis.check.FrameRow;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.job.SteelTemperatures;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.uncertainty.Origin;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** What is to be said of one stage as a whole: missing, answered, assumed, not used. */
record StageNotes(Job job, Stage stage, StageReadings readings) {

  /**
   * The notes, what is missing first.
   *
   * @param outcomes of the stage
   * @param used ids of the readings its checks used
   */
  List<Note> of(List<Outcome> outcomes, Set<String> used) {
    List<Note> notes = new ArrayList<>(notMeasured());
    notes.addAll(answers());
    notes.addAll(assumptions());
    temperature(outcomes).ifPresent(notes::add);
    notes.addAll(unused(used));
    return notes;
  }

  /** What the stage's measuring list asks for and nobody read, in one note. */
  private List<Note> notMeasured() {
    Set<Target> measured = new HashSet<>();
    readings.all().forEach(reading -> measured.add(reading.target()));
    List<Target> missing =
        MeasuringList.targets(job.setOut(), stage).stream()
            .filter(target -> !isCovered(target, measured))
            .toList();
    return missing.isEmpty()
        ? List.of()
        : List.of(
            new Note(
                Note.Kind.NOT_MEASURED,
                "Not measured, though the stage's list asks for "
                    + (missing.size() == 1 ? "it: " : "them: ")
                    + TargetWords.all(missing)
                    + ".",
                List.of()));
  }

  /**
   * A level may be read as height or staff, a lean by tilt meter or plumb line, a distance between
   * any faces, a row by running distances.
   */
  private static boolean isCovered(Target target, Set<Target> measured) {
    return switch (target.quantity()) {
      case HEIGHT ->
          measured.contains(target)
              || measured.contains(Target.at(MeasuredQuantity.STAFF, target.first()));
      case DISTANCE ->
          measured.contains(target)
              || (FrameRow.holds(target)
                  && measured.stream()
                      .filter(FrameRow::holds)
                      .anyMatch(other -> sameRow(target, other)));
      case TILT -> measured.contains(target) || hasPlumbLine(target, measured);
      default -> measured.contains(target);
    };
  }

  private static boolean hasPlumbLine(Target tilt, Set<Target> measured) {
    return tilt.first().feature().equals("column")
        && Stream.of("base", "eave")
            .map(feature -> new PointName(feature, tilt.first().place(), ""))
            .map(end -> new Target(MeasuredQuantity.PLUMB_OFFSET, List.of(end), tilt.axis(), ""))
            .allMatch(measured::contains);
  }

  private static boolean sameRow(Target one, Target other) {
    int end = FrameRow.number(one.second());
    return FrameRow.of(one.first()).equals(FrameRow.of(other.first()))
        && (FrameRow.number(other.first()) == end || FrameRow.number(other.second()) == end);
  }

  private List<Note> answers() {
    return readings.where(target -> target.quantity() == MeasuredQuantity.ATTRIBUTE).stream()
        .sorted(Comparator.comparing(Reading::at).thenComparing(Reading::id))
        .map(
            reading ->
                new Note(
                    Note.Kind.ANSWERED,
                    stage
                            .questions()
                            .getOrDefault(reading.target().question(), reading.target().question())
                        + " "
                        + (reading.valueSi() == 1 ? "Yes." : "No.")
                        + (reading.note().isEmpty() ? "" : " " + reading.note()),
                    List.of(reading.id())))
        .toList();
  }

  /** Meters the job does not describe, each said once. */
  private List<Note> assumptions() {
    Set<String> stated = new TreeSet<>();
    for (Reading reading : readings.all()) {
      if (reading.target().quantity() != MeasuredQuantity.ATTRIBUTE
          && !job.meters().containsKey(reading.meter())) {
        stated.add(Meter.assumption(reading.meter(), reading.target().quantity()));
      }
    }
    return stated.stream().map(text -> new Note(Note.Kind.ASSUMED, text, List.of())).toList();
  }

  /** Said once a stage in which lengths of steel were compared with the drawing. */
  private Optional<Note> temperature(List<Outcome> outcomes) {
    SteelTemperatures steel = job.steel();
    boolean known = steel.read(stage.id()).isPresent() || steel.strainUncertainty(stage.id()) == 0;
    return known || outcomes.stream().noneMatch(StageNotes::hangsOnTemperature)
        ? Optional.empty()
        : Optional.of(
            new Note(
                Note.Kind.ASSUMED,
                "Temperature of the steel: not stated, taken as between "
                    + LengthDisplay.decimal(steel.lowestCelsius(), 0)
                    + " and "
                    + LengthDisplay.decimal(steel.highestCelsius(), 0)
                    + " °C. A drawing gives lengths at 20 °C. Read it on the steel once a visit and"
                    + " give it as steel_temperature of [stages."
                    + stage.id()
                    + "].",
                List.of()));
  }

  private static boolean hangsOnTemperature(Outcome outcome) {
    return outcome.budget().variance(Origin.TEMPERATURE) > 0;
  }

  private List<Note> unused(Set<String> used) {
    List<Reading> left =
        readings.all().stream()
            .filter(reading -> reading.target().quantity() != MeasuredQuantity.ATTRIBUTE)
            .filter(reading -> !used.contains(reading.id()))
            .toList();
    if (left.isEmpty()) {
      return List.of();
    }
    return List.of(
        new Note(
            Note.Kind.INFORMATION,
            "Recorded, but no check uses it: "
                + TargetWords.all(
                    left.stream()
                        .map(Reading::target)
                        .sorted(Comparator.comparing(TargetWords::of))
                        .toList())
                + ".",
            left.stream().map(Reading::id).toList()));
  }
}
