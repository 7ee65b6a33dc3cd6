package datumpeg.analysis.simulate;

import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A crew on a site with its meters, measuring one stage; each level stands in one set-up.
 * Thread-safe: immutable, and each call has its own draws.
 *
 * @param site what is there to be measured
 * @param meters by the job's names for them, with the errors they have in this session
 * @param name of the session, the first part of each reading's id
 * @param start when the first reading is taken; the others follow at {@link #BETWEEN_READINGS}
 */
public record SimulatedSession(
    SimulatedSite site,
    SimulatedCrew crew,
    Map<String, SimulatedMeter> meters,
    String name,
    String stage,
    Instant start) {
  /** From one reading to the next. */
  public static final Duration BETWEEN_READINGS = Duration.ofSeconds(40);

  public SimulatedSession {
    meters = Map.copyOf(meters);
  }

  /**
   * The readings of all sightings, in their order: the same ones for the same seed.
   *
   * @throws IllegalArgumentException for a meter the session does not have, or a question
   * @throws datumpeg.analysis.building.UnknownPointException if the plan lacks a target's point
   */
  public List<Reading> read(List<Sighting> sightings, long seed) {
    NormalDraws draws = new NormalDraws(seed);
    List<Reading> readings = new ArrayList<>(sightings.size());
    for (Sighting sighting : sightings) {
      double value = value(sighting, draws) + sighting.slip();
      readings.add(reading(sighting, value, readings.size()));
    }
    return List.copyOf(readings);
  }

  /**
   * What a perfect meter in perfect hands would show.
   *
   * @throws IllegalArgumentException for a question
   */
  public double trueValue(Sighting sighting) {
    return value(sighting, site, LevelPlane.TRUE);
  }

  private double value(Sighting sighting, SimulatedSite seen, LevelPlane plane) {
    Target target = sighting.target();
    return switch (target.quantity()) {
      case DISTANCE -> seen.distanceMetres(target);
      case HEIGHT -> heightMetres(target, seen, plane);
      case STAFF -> -heightMetres(target, seen, plane);
      case TILT -> seen.tiltRadians(target, up(sighting));
      case PLUMB_OFFSET -> seen.plumbOffsetMetres(target);
      case OFFSET -> seen.offsetMetres(target);
      case ATTRIBUTE ->
          throw new IllegalArgumentException(
              "The question " + target.text() + " has no value to simulate.");
    };
  }

  private static double heightMetres(Target target, SimulatedSite seen, LevelPlane plane) {
    var point = seen.position(target.first());
    return point.zMetres() - plane.heightMetresAt(point);
  }

  private double up(Sighting sighting) {
    return sighting.upMetres().orElse(site.setOut().building().columnHeightMetres() / 2);
  }

  private double value(Sighting sighting, NormalDraws draws) {
    SimulatedMeter meter = meters.get(sighting.meter());
    if (meter == null) {
      throw new IllegalArgumentException(
          "The session "
              + name
              + " has no meter "
              + sighting.meter()
              + " to read "
              + sighting.target().text()
              + "; it has "
              + String.join(", ", meters.keySet().stream().sorted().toList())
              + ".");
    }
    double truth = value(sighting, site.withMarks(crew.marks()), meter.plane());
    Target target = sighting.target();
    return switch (target.quantity()) {
      case DISTANCE -> meter.showDistance(truth + misses(target, draws), draws);
      case TILT -> meter.showTilt(truth, sighting.face(), draws);
      case OFFSET, PLUMB_OFFSET -> meter.show(truth + misses(target, draws), draws);
      default -> meter.show(truth, draws);
    };
  }

  private double misses(Target target, NormalDraws draws) {
    return target.points().stream().mapToDouble(point -> crew.missMetres(point, draws)).sum();
  }

  private Reading reading(Sighting sighting, double value, int index) {
    return new Reading(
        name + "-" + (index + 1),
        stage,
        sighting.target(),
        value,
        sighting.face(),
        sighting.meter(),
        name,
        "",
        sighting.upMetres(),
        sighting.round(),
        start.plus(BETWEEN_READINGS.multipliedBy(index)),
        "simulated",
        "");
  }
}
