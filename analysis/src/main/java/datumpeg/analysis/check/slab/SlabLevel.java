package datumpeg.analysis.check.slab;

import datumpeg.analysis.adjust.AdjustedLevels;
import datumpeg.analysis.adjust.Adjustment;
import datumpeg.analysis.adjust.BestPlane;
import datumpeg.analysis.adjust.LevelNetwork;
import datumpeg.analysis.adjust.LevelReading;
import datumpeg.analysis.adjust.LevelSetUp;
import datumpeg.analysis.adjust.PlanPoint;
import datumpeg.analysis.adjust.SurfacePoint;
import datumpeg.analysis.adjust.Undetermined;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.LevelEstimate;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.SlipNotes;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Packing;
import datumpeg.analysis.slip.SlipNetworks;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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
    List<Reading> used = stage.current(all);
    if (used.isEmpty()) {
      return CheckResult.of(List.of(), List.of(), List.of());
    }
    LevelNetwork network = network(used, stage);
    Adjustment<AdjustedLevels> adjustment = network.adjust();
    List<Note> notes = new ArrayList<>();
    if (adjustment instanceof Undetermined<AdjustedLevels> undetermined) {
      notes.add(new Note(Note.Kind.UNDETERMINED, undetermined.reason(), List.of()));
    }
    Optional<AdjustedLevels> available = adjustment.available();
    if (available.isEmpty()) {
      return CheckResult.of(List.of(), notes, all);
    }
    AdjustedLevels levels = available.get();
    SlipNotes.ofNetwork("the levels", SlipNetworks.of(network), levels.fit(), used, stage)
        .ifPresent(notes::add);
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
    return new CheckResult(
        found,
        notes,
        Map.of(),
        map(slab, levels),
        all,
        List.of(Network.of("the levels", levels.fit(), used)));
  }

  private static boolean isLevel(Target target) {
    return (target.quantity() == MeasuredQuantity.HEIGHT
            || target.quantity() == MeasuredQuantity.STAFF)
        && List.of("slab", "seat").contains(target.first().feature());
  }

  private static List<String> named(AdjustedLevels levels, String feature) {
    return levels.names().stream().filter(name -> name.startsWith(feature + ".")).toList();
  }

  private LevelNetwork network(List<Reading> used, StageReadings stage) {
    Map<String, PlanPoint> points = new LinkedHashMap<>();
    Map<String, LevelSetUp> setUps = new LinkedHashMap<>();
    List<LevelReading> readings = new ArrayList<>();
    used.stream()
        .sorted(Comparator.comparing((Reading reading) -> reading.target().first()))
        .forEach(
            reading -> {
              PointName point = reading.target().first();
              Position place = job.setOut().position(point);
              points.putIfAbsent(
                  point.text(), new PlanPoint(point.text(), place.xMetres(), place.yMetres()));
              double tilt = stage.planeTiltRadians(reading);
              setUps.putIfAbsent(
                  reading.setupOrSession(), new LevelSetUp(reading.setupOrSession(), tilt, tilt));
              readings.add(
                  new LevelReading(
                      reading.setupOrSession(),
                      point.text(),
                      stage.marked(stage.observation(reading, up(reading)), point, "up", 1)));
            });
    return new LevelNetwork(List.copyOf(points.values()), List.copyOf(setUps.values()), readings);
  }

  /** A staff reading counts down from the plane, a height counts up. */
  private static double up(Reading reading) {
    return reading.target().quantity() == MeasuredQuantity.STAFF
        ? -reading.valueSi()
        : reading.valueSi();
  }

  private Outcome spread(
      String check,
      String target,
      List<String> names,
      AdjustedLevels levels,
      List<Reading> used,
      StageReadings stage,
      String plane) {
    Comparator<String> byLevel = Comparator.comparingDouble(name -> levels.level(name).value());
    String high = names.stream().max(byLevel).orElseThrow();
    String low = names.stream().min(byLevel).orElseThrow();
    String feature = names.get(0).substring(0, 4) + ".";
    List<Reading> behind =
        used.stream().filter(r -> r.target().first().text().startsWith(feature)).toList();
    return outcomes.spread(
        check,
        target,
        levels.difference(low, high).value(),
        greatestDifferenceUncertainty(names, levels) / Math.sqrt(2),
        names.size(),
        extentMetres(names, levels),
        stage.evidence(behind),
        "high " + high + ", low " + low + plane);
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

  private static double greatestDifferenceUncertainty(List<String> names, AdjustedLevels levels) {
    double greatest = 0;
    for (int i = 0; i < names.size(); i++) {
      for (int j = 0; j < i; j++) {
        greatest =
            Math.max(greatest, levels.difference(names.get(i), names.get(j)).standardUncertainty());
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
                "; best plane rises "
                    + slope(plane.slopeXMillimetresPerMetre())
                    + " toward end n, "
                    + slope(plane.slopeYMillimetresPerMetre())
                    + " toward side B")
        .orElse("");
  }

  private static String slope(Estimate millimetresPerMetre) {
    return LengthDisplay.signed(millimetresPerMetre.value(), 2)
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
