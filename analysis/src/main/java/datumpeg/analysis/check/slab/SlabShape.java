package datumpeg.analysis.check.slab;

import datumpeg.analysis.adjust.Adjusted;
import datumpeg.analysis.adjust.AdjustedPlan;
import datumpeg.analysis.adjust.AdjustedPoint;
import datumpeg.analysis.adjust.Adjustment;
import datumpeg.analysis.adjust.DistanceNetwork;
import datumpeg.analysis.adjust.MeasuredDistance;
import datumpeg.analysis.adjust.PlanPoint;
import datumpeg.analysis.adjust.PointPair;
import datumpeg.analysis.adjust.Undetermined;
import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.Outline;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.check.AgreementTest;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.DirectValues;
import datumpeg.analysis.check.Evidence;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.PointEstimate;
import datumpeg.analysis.check.SlipNotes;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.remedy.LinePlacement;
import datumpeg.analysis.slip.SlipNetworks;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Size, diagonals and squareness of the slab: one free network of whatever distances were taken.
 *
 * <p>Squareness of a corner: nominal length of the shorter adjoining side × tan(adjusted − design
 * angle), positive where the corner is wider than designed. Equal diagonals alone do not prove a
 * rectangle: an isosceles trapezium has them too. Worked: a corner 0.04° too wide beside a 9 m side
 * is 9000 · tan 0.04° = 6.28 mm out.
 */
public final class SlabShape implements Check {
  private final Job job;
  private final OutcomeMaker outcomes;
  private final Outline outline;

  public SlabShape(Job job, OutcomeMaker outcomes) {
    this.job = job;
    this.outcomes = outcomes;
    this.outline = new Outline(job.setOut().slab());
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Reading> used = stage.where(SlabShape::isSlabDistance);
    if (used.isEmpty()) {
      return CheckResult.of(List.of(), List.of(), List.of());
    }
    List<Note> notes = new ArrayList<>();
    List<AgreementTest> tests = new ArrayList<>();
    List<Outcome> found = new ArrayList<>();
    DirectValues direct = DirectValues.of(used, stage).orElseThrow();
    DistanceNetwork network = network(used, stage);
    Adjustment<AdjustedPlan> adjustment = network.adjust();
    Map<String, PointEstimate> points = new LinkedHashMap<>();
    List<Network> networks = new ArrayList<>();
    Optional<LinePlacement> placement = Optional.empty();
    if (adjustment instanceof Adjusted<AdjustedPlan> adjusted) {
      AdjustedPlan plan = adjusted.solution();
      found.addAll(outcomes(plan, direct, used, stage));
      plan.points().forEach(point -> points.put(point.name(), estimate(point)));
      networks.add(Network.of("the slab", plan.fit(), used));
      SlipNotes.ofNetwork("the slab", SlipNetworks.of(network), plan.fit(), used, stage)
          .ifPresent(tests::add);
      placement = new LinesOnSlab(job, outline).on(plan);
      new SlabNextMeasurement(plan, used, stage).note(found).ifPresent(notes::add);
      notes.addAll(mirrorNotes(plan));
    } else if (adjustment instanceof Undetermined<AdjustedPlan> undetermined) {
      found.addAll(outcomesAsObserved(direct, stage));
      SlipNotes.ofUnsettled("the slab", SlipNetworks.of(network), used, stage)
          .ifPresent(notes::add);
      notes.add(undeterminedNote(undetermined, used));
      tests.addAll(direct.tests());
    }
    return new CheckResult(found, notes, points, Map.of(), used, networks, placement, tests);
  }

  @Override
  public List<Outcome> outcomes(StageReadings stage) {
    List<Reading> used = stage.where(SlabShape::isSlabDistance);
    if (used.isEmpty()) {
      return List.of();
    }
    DirectValues direct = DirectValues.of(used, stage).orElseThrow();
    return network(used, stage)
        .adjust()
        .complete()
        .map(plan -> outcomes(plan, direct, used, stage))
        .orElseGet(() -> outcomesAsObserved(direct, stage));
  }

  private List<Outcome> outcomes(
      AdjustedPlan plan, DirectValues direct, List<Reading> used, StageReadings stage) {
    List<Outcome> found = new ArrayList<>(sizes(plan, used, stage));
    found.addAll(diagonals(direct, stage));
    found.addAll(squareness(plan, used, stage));
    found.addAll(new EdgeStraightness(job, outcomes).of(plan, stage.evidence(used)));
    return found;
  }

  private List<Outcome> outcomesAsObserved(DirectValues direct, StageReadings stage) {
    List<Outcome> found = new ArrayList<>(sizesAsObserved(direct, stage));
    found.addAll(diagonals(direct, stage));
    return found;
  }

  private static boolean isSlabDistance(Target target) {
    return target.quantity() == MeasuredQuantity.DISTANCE
        && target.points().stream().allMatch(point -> point.feature().equals("slab"));
  }

  private DistanceNetwork network(List<Reading> used, StageReadings stage) {
    Set<PointName> measured = new LinkedHashSet<>();
    used.stream()
        .flatMap(reading -> reading.target().points().stream())
        .sorted()
        .forEach(measured::add);
    List<String> names = measured.stream().map(PointName::text).toList();
    String origin = names.contains("slab.A1") ? "slab.A1" : names.get(0);
    String axis = axisPoint(names, origin);
    List<PlanPoint> approximate =
        measured.stream()
            .map(
                point ->
                    new PlanPoint(
                        point.text(),
                        job.setOut().position(point).xMetres(),
                        job.setOut().position(point).yMetres()))
            .toList();
    return new DistanceNetwork(
        origin,
        axis,
        approximate,
        used.stream()
            .map(
                reading ->
                    new MeasuredDistance(
                        reading.target().first().text(),
                        reading.target().second().text(),
                        stage.observation(reading)))
            .toList(),
        measured.stream().collect(Collectors.toMap(PointName::text, stage::definitionMetres)));
  }

  /** The last corner of side A, else any other point measured. */
  private static String axisPoint(List<String> names, String origin) {
    return names.stream()
        .filter(name -> name.startsWith("slab.A") && !name.equals(origin))
        .max(Comparator.comparingInt(SlabShape::number))
        .orElseGet(
            () -> names.stream().filter(name -> !name.equals(origin)).findFirst().orElseThrow());
  }

  private static int number(String name) {
    return GridMark.parse(name.substring("slab.".length())).map(GridMark::number).orElse(0);
  }

  private static PointEstimate estimate(AdjustedPoint point) {
    return new PointEstimate(
        point.xMetres(),
        point.yMetres(),
        point.xStandardUncertaintyMetres() * point.xStandardUncertaintyMetres(),
        point.yStandardUncertaintyMetres() * point.yStandardUncertaintyMetres(),
        point.covarianceSquareMetres());
  }

  /** The sides of the outline, each as its two corners in grid order. */
  private List<PointPair> sides() {
    List<PointPair> sides = new ArrayList<>();
    for (String corner : outline.corners()) {
      Target side = Target.distance(corner(corner), corner(outline.next(corner)));
      sides.add(new PointPair(side.first().place(), side.second().place()));
    }
    return sides;
  }

  private static PointName corner(String name) {
    return new PointName("slab", name, "");
  }

  private double nominal(PointPair pair) {
    return job.setOut().nominalDistanceMetres(corner(pair.first()), corner(pair.second()));
  }

  private List<Outcome> sizes(AdjustedPlan plan, List<Reading> used, StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    for (PointPair side : sides()) {
      if (has(plan, side.first()) && has(plan, side.second())) {
        Estimate length = plan.distance("slab." + side.first(), "slab." + side.second());
        found.add(size(side, length, stage.evidence(used)));
      }
    }
    return found;
  }

  private List<Outcome> sizesAsObserved(DirectValues direct, StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    for (PointPair side : sides()) {
      String target = "slab." + side.first() + "-slab." + side.second();
      if (direct.values().contains(target)) {
        found.add(
            size(
                side,
                direct.values().estimate(target),
                stage.evidence(direct.readingsOf(List.of(target)))));
      }
    }
    return found;
  }

  private Outcome size(PointPair side, Estimate length, Evidence evidence) {
    double nominal = nominal(side);
    return outcomes.signed(
        "slab-size",
        side.first() + "-" + side.second(),
        OptionalDouble.of(nominal),
        length,
        nominal,
        evidence);
  }

  private static boolean has(AdjustedPlan plan, String corner) {
    return plan.names().contains("slab." + corner);
  }

  /** The two diagonals of a four-cornered slab, as observed; what they share cancels. */
  private List<Outcome> diagonals(DirectValues direct, StageReadings stage) {
    List<String> corners = outline.corners();
    if (corners.size() != 4) {
      return List.of();
    }
    Target one = Target.distance(corner(corners.get(0)), corner(corners.get(2)));
    Target other = Target.distance(corner(corners.get(1)), corner(corners.get(3)));
    if (!direct.values().contains(one.text()) || !direct.values().contains(other.text())) {
      return List.of();
    }
    double nominalOne = job.setOut().nominalDistanceMetres(one.first(), one.second());
    double nominalOther = job.setOut().nominalDistanceMetres(other.first(), other.second());
    Linearised difference =
        direct.values().quantity(one.text()).minus(direct.values().quantity(other.text()));
    return List.of(
        outcomes.absoluteDifference(
            "slab-diagonals",
            "slab",
            difference.estimate().shifted(nominalOther - nominalOne),
            nominalOne,
            stage.evidence(direct.readingsOf(List.of(one.text(), other.text())))));
  }

  private List<Outcome> squareness(AdjustedPlan plan, List<Reading> used, StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    for (String at : outline.corners()) {
      if (has(plan, at) && has(plan, outline.next(at)) && has(plan, outline.previous(at))) {
        found.add(squareness(plan, at, stage.evidence(used)));
      }
    }
    found.sort(Comparator.comparing(Outcome::target));
    return found;
  }

  private Outcome squareness(AdjustedPlan plan, String at, Evidence evidence) {
    double shorter = outline.shorterSideMetres(at);
    Linearised wider =
        plan.linearisedAngle(
                "slab." + at,
                "slab." + outline.nextAnticlockwise(at),
                "slab." + outline.previousAnticlockwise(at))
            .shifted(-outline.interiorAngleRadians(at))
            .tangent()
            .scaled(shorter);
    return outcomes.signedWithAside("slab-square", at, wider.estimate(), shorter, evidence, "");
  }

  private static Note undeterminedNote(
      Undetermined<AdjustedPlan> undetermined, List<Reading> used) {
    String missing =
        undetermined.missing().stream()
            .map(pair -> TargetWords.named(pair.first() + "-" + pair.second()))
            .collect(Collectors.joining(", "));
    return new Note(
        Note.Kind.UNDETERMINED,
        "The slab's shape is not determined: "
            + TargetWords.inSentence(undetermined.reason())
            + "."
            + (missing.isEmpty() ? "" : " Measure next: " + missing + "."),
        used.stream().map(Reading::id).sorted().toList());
  }

  private static List<Note> mirrorNotes(AdjustedPlan plan) {
    return plan.mirrorAmbiguities().stream()
        .map(
            mirror ->
                new Note(
                    Note.Kind.UNDETERMINED,
                    mirror.points().stream()
                            .map(TargetWords::pointNamed)
                            .collect(Collectors.joining(", "))
                        + " could as well lie mirrored over the line from "
                        + TargetWords.pointNamed(mirror.hinge().first())
                        + " to "
                        + TargetWords.pointNamed(mirror.hinge().second())
                        + "; one more distance from it would tell.",
                    List.of()))
        .toList();
  }
}
