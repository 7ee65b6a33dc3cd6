package datumpeg.analysis.check.slab;

import datumpeg.analysis.check.AgreementTest;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.DirectValues;
import datumpeg.analysis.check.LevelledPoints;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.detail.FlatnessPlan;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * How flat the slab is: the greatest gap read under a straightedge ({@code straightedge}), and from
 * level profiles the numbers FF and FL of ASTM E1155 ({@code FF}, {@code FL}), of all lines
 * together.
 *
 * <p>A gap is the offset of a place {@code slab.@(x;y)} from the straightedge laid over it; which
 * way it is read does not count. Of n gaps the greatest is decided through the greatest of n
 * errors: see {@link datumpeg.analysis.conform.Conformance#probabilityOfMaximum}.
 */
public final class SlabFlatness implements Check {
  /** How limits and outcomes name it. */
  public static final String CHECK = "slab-flatness";

  private static final String STRAIGHTEDGE = "straightedge";
  private static final int WORST_TOLD = 3;

  private static final String LEAST_SOURCE =
      "[flatness] of the job file, found as in ASTM E1155, verify against your copy";

  private final Job job;
  private final OutcomeMaker outcomes;

  public SlabFlatness(Job job, OutcomeMaker outcomes) {
    this.job = job;
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    List<Note> notes = new ArrayList<>();
    List<AgreementTest> tests = new ArrayList<>();
    List<Reading> gaps = stage.where(SlabFlatness::isGap);
    DirectValues.of(gaps, stage, reading -> reading.target().text(), r -> Math.abs(r.valueSi()))
        .ifPresent(
            direct -> {
              tests.addAll(direct.tests());
              found.add(straightedge(direct, stage));
            });
    LevelledPoints levelled =
        LevelledPoints.of("the profiles", Set.of("profile"), job.setOut(), stage);
    notes.addAll(levelled.notes());
    levelled.test().ifPresent(tests::add);
    levelled
        .levels()
        .ifPresent(
            levels -> {
              FloorProfiles profiles = new FloorProfiles(plan(), levels);
              notes.addAll(profiles.notes());
              layout(profiles).note().ifPresent(notes::add);
              number("FF", plan().leastFlatness(), profiles.flatness(), levelled, stage, found);
              number("FL", plan().leastLevelness(), profiles.levelness(), levelled, stage, found);
            });
    List<Reading> used = new ArrayList<>(gaps);
    used.addAll(levelled.used());
    return new CheckResult(
            found, notes, Map.of(), Map.of(), used, levelled.network().stream().toList())
        .with(tests);
  }

  private FlatnessPlan plan() {
    return job.setOut().details().flatness().orElse(FlatnessPlan.USUAL);
  }

  private ProfileLayout layout(FloorProfiles profiles) {
    Map<String, FlatnessPlan.Line> read = new TreeMap<>(plan().lines());
    read.keySet().retainAll(profiles.names());
    return new ProfileLayout(read, List.copyOf(job.setOut().slab().corners().values()));
  }

  private static boolean isGap(Target target) {
    return target.quantity() == MeasuredQuantity.OFFSET && target.first().feature().equals("slab");
  }

  private Outcome straightedge(DirectValues direct, StageReadings stage) {
    List<String> names =
        direct.values().names().stream()
            .sorted(
                Comparator.comparingDouble((String name) -> -gap(direct, name).value())
                    .thenComparing(name -> name))
            .toList();
    Estimate leastCertain =
        names.stream()
            .map(name -> gap(direct, name))
            .max(Comparator.comparingDouble(Estimate::standardUncertainty))
            .orElseThrow();
    String worst =
        names.stream()
            .limit(WORST_TOLD)
            .map(
                name ->
                    Millimetres.of(gap(direct, name).value())
                        + " on "
                        + TargetWords.pointNamed(name))
            .collect(Collectors.joining(", "));
    return outcomes.maximum(
        CHECK,
        STRAIGHTEDGE,
        gap(direct, names.get(0)).value(),
        leastCertain,
        names.size(),
        plan().straightedgeMetres(),
        stage.evidence(direct.readingsOf(names)),
        "under a straightedge of "
            + LengthDisplay.decimal(plan().straightedgeMetres(), 2)
            + " m, worst of "
            + names.size()
            + ": "
            + worst);
  }

  private static Estimate gap(DirectValues direct, String name) {
    return direct.values().estimate(name);
  }

  private void number(
      String target,
      OptionalDouble least,
      Map<String, FNumber> lines,
      LevelledPoints levelled,
      StageReadings stage,
      List<Outcome> found) {
    if (lines.isEmpty()) {
      return;
    }
    FNumber all = FNumber.combined(List.copyOf(lines.values()));
    String each =
        lines.entrySet().stream()
            .map(line -> line.getKey() + " " + LengthDisplay.decimal(line.getValue().value(), 1))
            .collect(Collectors.joining(", "));
    found.add(
        outcomes.floorNumber(
            CHECK,
            target,
            least,
            new Estimate(all.value(), all.standardUncertainty()),
            LEAST_SOURCE,
            stage.evidence(levelled.used()),
            "by line: " + each + "; from " + all.count() + " values"));
  }

  /** What is wrong, as the rest of a sentence. */
  public static String sentence(Outcome outcome) {
    if (outcome.unit() == OutcomeUnit.F_NUMBER) {
      return "the slab's "
          + (outcome.target().equals("FF") ? "flatness" : "levelness")
          + " number "
          + outcome.target()
          + " is "
          + LengthDisplay.decimal(outcome.measured(), 1)
          + " ± "
          + LengthDisplay.decimal(outcome.expandedUncertainty(), 1)
          + ", and at least "
          + LengthDisplay.decimal(outcome.nominal().orElse(0), 1)
          + " is asked for ("
          + outcome.aside()
          + ").";
    }
    return "the greatest gap between slab and straightedge is "
        + Millimetres.with(outcome.deviation(), outcome.expandedUncertainty())
        + " ("
        + outcome.aside()
        + ").";
  }

  /** What to do about it: concrete is ground or filled, or is a matter for who laid it. */
  public static String remedy(Outcome outcome) {
    String where =
        outcome.unit() == OutcomeUnit.F_NUMBER
            ? "Tell who laid the slab, with the profiles"
            : "Grind the high or fill the low places named, worst first, and lay the straightedge"
                + " again; or tell who laid the slab";
    return where + ". Ask the engineer before grinding or filling under a base or near an anchor.";
  }

  /**
   * A floor's number is limited by how much of the floor was read.
   *
   * @param chance how sure it is now, in brackets
   */
  public static String whatWouldDecide(String chance) {
    return "Level more lines"
        + chance
        + ": the number is that of a sample of the floor. Where the level itself scatters by more"
        + " than the floor bends, take a better level or a straightedge.";
  }
}
