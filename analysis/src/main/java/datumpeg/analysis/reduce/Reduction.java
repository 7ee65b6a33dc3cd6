package datumpeg.analysis.reduce;

import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.Doubts;
import datumpeg.analysis.check.FrameRow;
import datumpeg.analysis.check.LevelEstimate;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.PointEstimate;
import datumpeg.analysis.check.Rounds;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.check.assembly.FootLine;
import datumpeg.analysis.check.assembly.RafterPair;
import datumpeg.analysis.check.assembly.WallSquare;
import datumpeg.analysis.check.enclosure.GutterFall;
import datumpeg.analysis.check.enclosure.MullionSpacing;
import datumpeg.analysis.check.enclosure.OpeningShape;
import datumpeg.analysis.check.enclosure.PostPlumb;
import datumpeg.analysis.check.enclosure.RoofSquare;
import datumpeg.analysis.check.enclosure.SheetRun;
import datumpeg.analysis.check.frame.EaveLevel;
import datumpeg.analysis.check.frame.Frames;
import datumpeg.analysis.check.frame.Straightness;
import datumpeg.analysis.check.slab.AnchorEdge;
import datumpeg.analysis.check.slab.EdgeStraightness;
import datumpeg.analysis.check.slab.SlabFlatness;
import datumpeg.analysis.check.slab.SlabLevel;
import datumpeg.analysis.check.slab.SlabShape;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.drift.DriftHistory;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.job.SteelTemperatures;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.remedy.LinePlacement;
import datumpeg.analysis.remedy.Movability;
import datumpeg.analysis.uncertainty.Origin;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * From a job and its readings in force to everything that follows from them. A pure function: equal
 * inputs give equal findings, whatever the order of the readings.
 */
public final class Reduction {
  private final Job job;
  private final String jobDigest;
  private final DriftHistory drift;
  private final List<Check> checks;

  /**
   * @param jobDigest names the revision of the job file, and is passed through to the findings
   */
  public Reduction(Job job, String jobDigest) {
    this(job, jobDigest, DriftHistory.NONE);
  }

  /**
   * @param drift the checks of the meters that readings name
   */
  public Reduction(Job job, String jobDigest, DriftHistory drift) {
    this.job = job;
    this.jobDigest = jobDigest;
    this.drift = drift;
    OutcomeMaker outcomes = new OutcomeMaker(job);
    this.checks =
        List.of(
            new SlabShape(job, outcomes),
            new SlabLevel(job, outcomes),
            new SlabFlatness(job, outcomes),
            new Frames(job, outcomes),
            new RafterPair(job, outcomes),
            new WallSquare(job, outcomes),
            new FootLine(job, outcomes),
            Straightness.ofLines(job, outcomes),
            Straightness.ofBases(job, outcomes),
            new EdgeStraightness(job, outcomes),
            new AnchorEdge(job, outcomes),
            new EaveLevel(job, outcomes),
            new PostPlumb(job, outcomes),
            new MullionSpacing(job, outcomes),
            new OpeningShape(job, outcomes),
            new RoofSquare(job, outcomes),
            new GutterFall(job, outcomes),
            new SheetRun(job, outcomes));
  }

  /**
   * Reduces all stages that have readings.
   *
   * @param inForce readings that no void names, of any stages
   * @param moved what was moved, in order
   * @throws IllegalArgumentException if a reading names a stage or point the job does not have
   */
  public Findings reduce(List<Reading> inForce, List<MovedThing> moved) {
    Rounds rounds = new Rounds(moved, inForce);
    Map<String, List<Reading>> byStage = new LinkedHashMap<>();
    job.stages().forEach(stage -> byStage.put(stage.id(), new ArrayList<>()));
    for (Reading reading : inForce) {
      List<Reading> ofStage = byStage.get(reading.stage());
      if (ofStage == null) {
        throw new IllegalArgumentException(
            "The reading "
                + reading.id()
                + " names stage "
                + reading.stage()
                + ", which the job does not have; it has "
                + String.join(", ", byStage.keySet())
                + ".");
      }
      ofStage.add(reading);
    }
    List<StageFindings> stages = new ArrayList<>();
    for (Stage stage : job.stages()) {
      List<Reading> ofStage = byStage.getOrDefault(stage.id(), List.of());
      if (!ofStage.isEmpty()) {
        stages.add(reduceStage(stage, ofStage, rounds));
      }
    }
    return new Findings(job.identity().id(), jobDigest, stages);
  }

  private StageFindings reduceStage(Stage stage, List<Reading> ofStage, Rounds rounds) {
    StageReadings readings = new StageReadings(job, ofStage, rounds);
    Remedies remedies = new Remedies(Movability.at(stage.id(), job.stages()), job);
    List<Outcome> bare = new ArrayList<>();
    List<Note> notes = new ArrayList<>();
    Map<String, PointEstimate> points = new LinkedHashMap<>();
    Map<String, LevelEstimate> levels = new LinkedHashMap<>();
    List<Network> networks = new ArrayList<>();
    Optional<LinePlacement> placement = Optional.empty();
    Set<String> used = new HashSet<>();
    List<CheckResult> first = checks.stream().map(check -> check.of(readings)).toList();
    List<Note> doubts =
        Doubts.of(first.stream().flatMap(result -> result.tests().stream()).toList());
    DoubtedResults doubted = new DoubtedResults(checks, readings, first);
    for (CheckResult result : doubted.of(doubts)) {
      result.outcomes().forEach(outcome -> bare.add(doubted.told(outcome)));
      notes.addAll(result.notes());
      points.putAll(result.points());
      levels.putAll(result.levels());
      networks.addAll(result.networks());
      placement = placement.or(result::placement);
      result.used().forEach(reading -> used.add(reading.id()));
    }
    notes.addAll(0, doubts);
    List<Outcome> outcomes = bare.stream().map(remedies::apply).toList();
    notes.addAll(drift.doubts(readings.all()));
    notes.addAll(notMeasured(stage, readings));
    notes.addAll(answers(stage, readings));
    notes.addAll(assumptions(readings));
    temperature(stage, outcomes).ifPresent(notes::add);
    notes.addAll(unused(readings, used));
    List<Cause> causes = new Causes(remedies.situation()).of(outcomes);
    return new StageFindings(
        stage.id(),
        ofStage.size(),
        outcomes,
        points,
        levels,
        causes,
        notes,
        networks,
        new Answers(stage).of(outcomes, causes, notes, placement),
        placement);
  }

  /** What the stage's measuring list asks for and nobody read, in one note. */
  private List<Note> notMeasured(Stage stage, StageReadings readings) {
    Set<Target> measured = new HashSet<>();
    readings.all().forEach(reading -> measured.add(reading.target()));
    List<String> missing =
        MeasuringList.of(job.setOut(), stage).targets().stream()
            .filter(target -> !isCovered(target, measured))
            .map(target -> target.quantity().text() + " " + target.text())
            .toList();
    return missing.isEmpty()
        ? List.of()
        : List.of(
            new Note(
                Note.Kind.NOT_MEASURED,
                "Not measured, though the stage's list asks for "
                    + (missing.size() == 1 ? "it: " : "them: ")
                    + String.join(", ", missing)
                    + ".",
                List.of()));
  }

  /**
   * A level may be read as height or staff, a distance between any faces, a row by running
   * distances.
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
      default -> measured.contains(target);
    };
  }

  private static boolean sameRow(Target one, Target other) {
    int end = FrameRow.number(one.second());
    return FrameRow.of(one.first()).equals(FrameRow.of(other.first()))
        && (FrameRow.number(other.first()) == end || FrameRow.number(other.second()) == end);
  }

  private static List<Note> answers(Stage stage, StageReadings readings) {
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
  private List<Note> assumptions(StageReadings readings) {
    Set<String> stated = new TreeSet<>();
    for (Reading reading : readings.all()) {
      if (reading.target().quantity() != MeasuredQuantity.ATTRIBUTE
          && !job.meters().containsKey(reading.meter())) {
        stated.add(Meter.assumed(reading.meter(), reading.target().quantity()).stated());
      }
    }
    return stated.stream()
        .map(text -> new Note(Note.Kind.ASSUMED, "Accuracy of a meter: " + text + ".", List.of()))
        .toList();
  }

  /** Said once a stage in which lengths of steel were compared with the drawing. */
  private Optional<Note> temperature(Stage stage, List<Outcome> outcomes) {
    SteelTemperatures steel = job.steel();
    boolean known = steel.read(stage.id()).isPresent() || steel.strainUncertainty(stage.id()) == 0;
    return known || outcomes.stream().noneMatch(Reduction::hangsOnTemperature)
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

  private static List<Note> unused(StageReadings readings, Set<String> used) {
    List<Reading> left =
        readings.all().stream()
            .filter(reading -> reading.target().quantity() != MeasuredQuantity.ATTRIBUTE)
            .filter(reading -> !used.contains(reading.id()))
            .toList();
    if (left.isEmpty()) {
      return List.of();
    }
    Set<String> targets = new TreeSet<>();
    left.forEach(r -> targets.add(r.target().quantity().text() + " " + r.target().text()));
    return List.of(
        new Note(
            Note.Kind.INFORMATION,
            "Recorded, but no check uses it: " + String.join(", ", targets) + ".",
            left.stream().map(Reading::id).toList()));
  }
}
