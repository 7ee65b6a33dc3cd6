package datumpeg.bridge.samples;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.simulate.NormalDraws;
import datumpeg.analysis.simulate.Sighting;
import datumpeg.analysis.simulate.SimulatedColumn;
import datumpeg.analysis.simulate.SimulatedCrew;
import datumpeg.analysis.simulate.SimulatedMeter;
import datumpeg.analysis.simulate.SimulatedSession;
import datumpeg.analysis.simulate.SimulatedSite;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * A crew's visit to the site in one stage: what is measured, with which meters and how well. The
 * same seed gives the same readings. One thread.
 */
final class Visit {
  private static final double LEVEL_PLANE_METRES = 1.5;

  private final Job job;
  private final SimulatedSite site;
  private final String name;
  private final String stage;
  private final Instant start;
  private final long seed;
  private final Map<String, SimulatedMeter> meters = new LinkedHashMap<>();
  private final List<Sighting> sightings = new ArrayList<>();

  /** The meters have the job's accuracy; their common errors are drawn for this visit. */
  Visit(Job job, SimulatedSite site, String name, String stage, Instant start, long seed) {
    this.job = job;
    this.site = site;
    this.name = name;
    this.stage = stage;
    this.start = start;
    this.seed = seed;
    NormalDraws draws = new NormalDraws(seed);
    job.meters().forEach((id, meter) -> meters.put(id, draw(meter, draws.split())));
  }

  private static SimulatedMeter draw(Meter meter, NormalDraws draws) {
    MeterAccuracy accuracy = meter.accuracy();
    return meter.quantity() == MeasuredQuantity.STAFF || meter.quantity() == MeasuredQuantity.HEIGHT
        ? SimulatedMeter.drawLevel(accuracy, LEVEL_PLANE_METRES, draws)
        : SimulatedMeter.draw(accuracy, draws);
  }

  /** Gives a meter a common error of its own: a tilt meter that was dropped, say. */
  Visit withCommonError(String meter, double error) {
    meters.computeIfPresent(meter, (id, drawn) -> drawn.withCommonError(error));
    return this;
  }

  Visit measure(MeasuredQuantity quantity, String meter, List<String> targets) {
    for (String target : targets) {
      sightings.add(Sighting.of(Target.parse(quantity, target), meter));
    }
    return this;
  }

  /** Measures one distance, and makes a blunder. */
  Visit measureWithSlip(String meter, String target, double addedMetres) {
    Target distance = Target.parse(MeasuredQuantity.DISTANCE, target);
    sightings.add(Sighting.of(distance, meter).withSlip(addedMetres));
    return this;
  }

  /** Reads tilts, turns the meter end for end, and reads them again. */
  Visit measureOnTwoFaces(String meter, List<String> targets) {
    for (String target : targets) {
      Sighting tilt = Sighting.of(Target.parse(MeasuredQuantity.TILT, target), meter);
      sightings.add(tilt.onFace(1));
      sightings.add(tilt.onFace(2));
    }
    return this;
  }

  List<Reading> readings() {
    return session().read(sightings, seed);
  }

  private SimulatedSession session() {
    return new SimulatedSession(site, crew(), meters, name, stage, start);
  }

  /** One crew a job: its marks are the same at every visit, whatever is measured there. */
  private SimulatedCrew crew() {
    Map<PointName, Position> marks = new LinkedHashMap<>();
    sightings.stream()
        .flatMap(sighting -> sighting.target().points().stream())
        .distinct()
        .forEach(
            point -> {
              NormalDraws draws = new NormalDraws((job.identity().id() + point.text()).hashCode());
              marks.putAll(
                  SimulatedCrew.marking(job.pointDefinitionsMetres(), List.of(point), draws)
                      .marks());
            });
    return new SimulatedCrew(Map.of(), marks);
  }

  String name() {
    return name;
  }

  String stage() {
    return stage;
  }

  /** The meters that were used, by their names in order. */
  Map<String, SimulatedMeter> meters() {
    Map<String, SimulatedMeter> used = new TreeMap<>(meters);
    used.keySet().retainAll(sightings.stream().map(Sighting::meter).toList());
    return used;
  }

  /** The columns whose stand the readings depend on; none for a visit to the slab. */
  Map<GridMark, SimulatedColumn> columns() {
    return measured().contains("column") || measured().contains("eave") ? site.columns() : Map.of();
  }

  /** How far from the plan the points are that the readings depend on. */
  Map<PointName, Position> shifts() {
    Map<PointName, Position> shifts = new LinkedHashMap<>(site.shifts());
    shifts.keySet().removeIf(point -> !measured().contains(point.feature()));
    return shifts;
  }

  private Set<String> measured() {
    return sightings.stream()
        .flatMap(sighting -> sighting.target().points().stream())
        .map(PointName::feature)
        .collect(Collectors.toSet());
  }

  /** The sightings that carry a blunder. */
  List<Sighting> slips() {
    return sightings.stream().filter(sighting -> sighting.slip() != 0).toList();
  }

  /** What perfect meters in perfect hands would have shown, by quantity and target. */
  Map<Target, Double> trueValues() {
    Map<Target, Double> values = new LinkedHashMap<>();
    SimulatedSession session = session();
    sightings.forEach(sighting -> values.put(sighting.target(), session.trueValue(sighting)));
    return values;
  }
}
