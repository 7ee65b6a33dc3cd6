package datumpeg.analysis.reduce;

import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.Doubts;
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
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.remedy.LinePlacement;
import datumpeg.analysis.remedy.Movability;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

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
    return reduce(new Rounds(moved, inForce), List.of());
  }

  /**
   * As {@link #reduce(List, List)}, sooner: stages whose readings are what they were are taken
   * over.
   *
   * @param known what reductions equal to this one came to
   */
  public Findings reduce(Rounds rounds, List<Reduced> known) {
    Map<String, List<Reading>> byStage = byStage(rounds.readings());
    List<StageFindings> stages = new ArrayList<>();
    for (Stage stage : job.stages()) {
      List<Reading> ofStage = byStage.getOrDefault(stage.id(), List.of());
      if (!ofStage.isEmpty()) {
        stages.add(
            known.stream()
                .flatMap(one -> one.unchanged(stage.id(), ofStage, rounds).stream())
                .findFirst()
                .orElseGet(() -> reduceStage(stage, ofStage, rounds)));
      }
    }
    return new Findings(job.identity().id(), jobDigest, stages);
  }

  private Map<String, List<Reading>> byStage(List<Reading> inForce) {
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
    return byStage;
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
    Doubts doubts = Doubts.of(first);
    DoubtedResults doubted = new DoubtedResults(checks, readings, first);
    for (CheckResult result : doubted.of(doubts.notes())) {
      result.outcomes().forEach(outcome -> bare.add(doubted.told(outcome)));
      notes.addAll(told(result, doubts));
      points.putAll(result.points());
      levels.putAll(result.levels());
      networks.addAll(result.networks());
      placement = placement.or(result::placement);
      result.used().forEach(reading -> used.add(reading.id()));
    }
    notes.addAll(0, doubts.notes());
    Function<Outcome, Optional<String>> before =
        outcome ->
            doubts
                .first(outcome)
                .or(() -> doubted.readingBehind(outcome).flatMap(id -> doubts.first(List.of(id))));
    List<Outcome> outcomes =
        bare.stream()
            .map(
                outcome -> remedies.apply(inDoubt(outcome, before, doubted), before.apply(outcome)))
            .toList();
    notes.addAll(drift.doubts(readings.all()));
    notes.addAll(new StageNotes(job, stage, readings).of(outcomes, used));
    List<Cause> causes = new Causes(remedies.situation(), before).of(outcomes);
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
        placement,
        outcomes.stream()
            .filter(outcome -> before.apply(outcome).isPresent())
            .collect(Collectors.toSet()));
  }

  /** What a contradiction reaches says so itself, whatever was found of it. */
  private static Outcome inDoubt(
      Outcome outcome, Function<Outcome, Optional<String>> before, DoubtedResults doubted) {
    return before.apply(outcome).isEmpty() || doubted.widens(outcome)
        ? outcome
        : outcome.withFurtherAside("in doubt: readings it follows from contradict each other");
  }

  /** While readings contradict each other, what to read next is what tells which is right. */
  private static List<Note> told(CheckResult result, Doubts doubts) {
    return doubts.concern(result)
        ? result.notes().stream().filter(note -> note.kind() != Note.Kind.NEXT_MEASUREMENT).toList()
        : result.notes();
  }
}
