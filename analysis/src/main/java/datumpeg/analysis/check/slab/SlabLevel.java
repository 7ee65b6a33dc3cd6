package datumpeg.analysis.check.slab;

import datumpeg.analysis.adjust.AdjustedLevels;
import datumpeg.analysis.adjust.BestPlane;
import datumpeg.analysis.adjust.PlanPoint;
import datumpeg.analysis.adjust.SurfacePoint;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.LevelEstimate;
import datumpeg.analysis.check.LevelledPoints;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Packing;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Levels of the slab and of the seats under the bases: spread, level of each point, best plane,
 * high and low, and the packing that brings the seats level.
 *
 * <p>The spread of n flat points read with u = 1 mm is not 0 but some 3 mm for nine of them; it is
 * therefore decided through the range of the errors, not as if it were one measured value: see
 * {@link datumpeg.analysis.conform.Conformance#probabilityOfSpread}.
 */
public final class SlabLevel implements Check {
  private final Job job;
  private final OutcomeMaker outcomes;

  public SlabLevel(Job job, OutcomeMaker outcomes) {
    this.job = job;
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Reading> all = stage.where(SlabLevel::isLevel);
    LevelledPoints levelled =
        LevelledPoints.of("the levels", Set.of("slab", "seat"), job.setOut(), stage);
    if (levelled.levels().isEmpty()) {
      return CheckResult.of(List.of(), levelled.notes(), all);
    }
    List<Reading> used = levelled.used();
    AdjustedLevels levels = levelled.levels().get();
    List<Outcome> found = new ArrayList<>();
    List<String> slab = named(levels, "slab");
    List<String> seats = named(levels, "seat");
    if (slab.size() >= 2) {
      found.add(spread("slab-level", "slab", slab, levels, used, stage, plane(slab, levels)));
      found.addAll(points(slab, levels, used, stage));
    }
    if (seats.size() >= 2) {
      Outcome spread = spread("seat-level", "seats", seats, levels, used, stage, "");
      found.add(spread.withRemedy(packing(seats, levels, spread)));
    }
    List<Note> notes = new ArrayList<>(levelled.notes());
    levelled
        .model()
        .flatMap(model -> new NextLevel(model, levels, used, stage).note(found))
        .ifPresent(notes::add);
    return new CheckResult(
            found, notes, Map.of(), map(slab, levels), all, levelled.network().stream().toList())
        .with(levelled.test().stream().toList());
  }

  private static boolean isLevel(Target target) {
    return (target.quantity() == MeasuredQuantity.HEIGHT
            || target.quantity() == MeasuredQuantity.STAFF)
        && List.of("slab", "seat").contains(target.first().feature());
  }

  private static List<String> named(AdjustedLevels levels, String feature) {
    return levels.names().stream().filter(name -> name.startsWith(feature + ".")).toList();
  }

  private Outcome spread(
      String check,
      String target,
      List<String> names,
      AdjustedLevels levels,
      List<Reading> used,
      StageReadings stage,
      String plane) {
    String high = levels.highest(names);
    String low = levels.lowest(names);
    String feature = names.get(0).substring(0, 4) + ".";
    List<Reading> behind =
        used.stream().filter(r -> r.target().first().text().startsWith(feature)).toList();
    return outcomes.spread(
        check,
        target,
        levels.difference(low, high).value(),
        levels.leastCertainDifference(names),
        names.size(),
        extentMetres(names, levels),
        stage.evidence(behind),
        "highest at "
            + TargetWords.pointNamed(high)
            + ", lowest at "
            + TargetWords.pointNamed(low)
            + plane);
  }

  /** The greatest distance in plan between the points: what a limit by ratio works on. */
  private static double extentMetres(List<String> names, AdjustedLevels levels) {
    List<PlanPoint> points =
        levels.points().stream().filter(point -> names.contains(point.name())).toList();
    double greatest = 0;
    for (PlanPoint one : points) {
      for (PlanPoint other : points) {
        double dx = other.xMetres() - one.xMetres();
        double dy = other.yMetres() - one.yMetres();
        greatest = Math.max(greatest, Math.sqrt(dx * dx + dy * dy));
      }
    }
    return greatest;
  }

  private List<Outcome> points(
      List<String> names, AdjustedLevels levels, List<Reading> used, StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    for (String name : names) {
      List<Reading> behind =
          used.stream().filter(r -> r.target().first().text().equals(name)).toList();
      found.add(
          outcomes.signedWithAside(
              "slab-level-point",
              name,
              levels.linearisedLevel(name, names).estimate(),
              extentMetres(names, levels),
              stage.evidence(behind),
              ""));
    }
    return found;
  }

  /** Slopes of the best plane, in words; nothing if the points do not span one. */
  private String plane(List<String> names, AdjustedLevels levels) {
    List<SurfacePoint> points =
        levels.points().stream()
            .filter(point -> names.contains(point.name()))
            .map(
                point ->
                    new SurfacePoint(
                        point.name(),
                        point.xMetres(),
                        point.yMetres(),
                        levels.linearisedLevel(point.name(), names)))
            .toList();
    if (points.size() < 3) {
      return "";
    }
    return BestPlane.fit(points)
        .complete()
        .map(
            plane ->
                "; best plane "
                    + slope(plane.slopeXMillimetresPerMetre())
                    + " toward end n, "
                    + slope(plane.slopeYMillimetresPerMetre())
                    + " toward side B")
        .orElse("");
  }

  private static String slope(Estimate millimetresPerMetre) {
    return (millimetresPerMetre.value() < 0 ? "falls " : "rises ")
        + LengthDisplay.decimal(Math.abs(millimetresPerMetre.value()), 2)
        + " ± "
        + LengthDisplay.decimal(millimetresPerMetre.expanded(), 2)
        + " mm/m";
  }

  private String packing(List<String> seats, AdjustedLevels levels, Outcome spread) {
    Map<String, Double> byBase = new LinkedHashMap<>();
    seats.forEach(name -> byBase.put(name.substring("seat.".length()), levels.level(name).value()));
    double visible = Estimate.COVERAGE_FACTOR * Math.sqrt(2) * spread.standardUncertainty();
    Packing packing = Packing.toTheHighest(byBase, job.setOut().slab().platesMetres(), visible);
    if (job.setOut().slab().platesMetres().isEmpty()) {
      return "";
    }
    return packing.words().isEmpty()
        ? "No packing: no base is lower than the highest by more than the level can see ("
            + Millimetres.of(visible)
            + ")."
        : "Pack under the bases: " + packing.words() + ".";
  }

  /** Levels against the mean of the slab's points, or of all where the slab has none. */
  private static Map<String, LevelEstimate> map(List<String> slab, AdjustedLevels levels) {
    List<String> reference = slab.isEmpty() ? levels.names() : slab;
    Map<String, LevelEstimate> map = new LinkedHashMap<>();
    for (PlanPoint point : levels.points()) {
      Estimate level = levels.linearisedLevel(point.name(), reference).estimate();
      map.put(
          point.name(),
          new LevelEstimate(
              point.xMetres(), point.yMetres(), level.value(), level.standardUncertainty()));
    }
    return map;
  }
}
