package datumpeg.analysis.reduce;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.Opening;
import datumpeg.analysis.building.Outline;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.building.Wall;
import datumpeg.analysis.conform.LimitRule;
import datumpeg.analysis.conform.Tolerance;
import datumpeg.analysis.detail.Anchors;
import datumpeg.analysis.detail.Details;
import datumpeg.analysis.detail.FlatnessPlan;
import datumpeg.analysis.detail.Gutter;
import datumpeg.analysis.detail.Mullion;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.job.SteelTemperatures;
import datumpeg.analysis.measuring.CheckNames;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.simulate.NormalDraws;
import datumpeg.analysis.simulate.Sighting;
import datumpeg.analysis.simulate.SimulatedColumn;
import datumpeg.analysis.simulate.SimulatedCrew;
import datumpeg.analysis.simulate.SimulatedMeter;
import datumpeg.analysis.simulate.SimulatedSession;
import datumpeg.analysis.simulate.SimulatedSite;
import datumpeg.analysis.stat.Normal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One invented site with drawn truth, surveyed whole with drawn errors its reduction is not told.
 *
 * <p>Truth: every point normally distributed about its place by {@link #SHIFT_METRES} each way,
 * every column leaning by {@link #LEAN_METRES} each way and bowed by at most height/1000, evenly.
 *
 * <p>Errors, of the size the job states: each stage is read in two sessions, the second repeating
 * levels and slab distances from other zeros, scales and level planes; each point is marked once, a
 * little beside itself; tilts are read {@link #TILT_UP_METRES} up, so that the bow is in them, the
 * columns of side A on two faces and those of side B on one; every value is rounded to the meter's
 * resolution.
 *
 * <p>The site is as it is on the day, its steel anywhere between the temperatures the job allows.
 *
 * @param readings of all stages
 * @param steelCelsius how warm the steel is on the day
 */
record SimulatedSurvey(SimulatedSite site, List<Reading> readings, double steelCelsius) {
  static final double SHIFT_METRES = 0.005;
  static final double LEAN_METRES = 0.006;
  static final double TILT_UP_METRES = 1.5;

  /** The limit of every check whose limit is not given below: ±10 mm. */
  static final double LIMIT_METRES = 0.010;

  /** Limits near the middle of what the simulated truth gives, so that both sides are met. */
  static final Map<String, Double> OTHER_LIMITS_METRES =
      Map.of(
          "slab-level", 0.014, "seat-level", 0.014, "portal-plumb", 0.006, "straightness", 0.006);

  private static final double DEGREE = StrictMath.toRadians(1);
  private static final double PLANE_METRES = 1.5;

  private static final String SEATS =
      " seat.A1 seat.A2 seat.A3 seat.A4 seat.B4 seat.B3 seat.B2 seat.B1";

  /** Three bays on a 9 m by 18 m slab; every check is asked for in a stage of its own besides. */
  static Job job() {
    return job(
        new InventedJob(),
        "slab.A1 slab.A4 slab.B4 slab.B1 slab.@(9;0) slab.@(9;4.5) slab.@(9;9)" + SEATS);
  }

  /** The same building, its slab of six corners with an inner one at B2. */
  static Job jobWithAnInnerCorner() {
    InventedJob job = new InventedJob();
    Map<String, PlanPoint> corners = new LinkedHashMap<>();
    corners.put("A1", new PlanPoint(0, 0));
    corners.put("A4", new PlanPoint(18, 0));
    corners.put("B4", new PlanPoint(18, 9));
    corners.put("B2", new PlanPoint(6, 9));
    corners.put("C2", new PlanPoint(6, 13));
    corners.put("C1", new PlanPoint(0, 13));
    job.slabCorners = corners;
    return job(
        job, "slab.A1 slab.A4 slab.B4 slab.B2 slab.C2 slab.C1 slab.@(9;0) slab.@(9;9)" + SEATS);
  }

  private static Job job(InventedJob job, String levelPoints) {
    job.stages =
        Stream.concat(
                Stage.STANDARD.stream(),
                Stream.of(new Stage("survey", "everything", CheckNames.ALL, Map.of(), false)))
            .toList();
    job.levelPoints =
        Stream.of(levelPoints.split(" ")).map(text -> PointName.parse(text).orElseThrow()).toList();
    job.steel = SteelTemperatures.UNKNOWN;
    job.sheetCoverMetres = OptionalDouble.of(0.762);
    job.details = details();
    job.openings = List.of(new Opening("D1", Wall.END_1, 3.0, 2.88, 3.0));
    for (String check : CheckNames.ALL) {
      double limit = OTHER_LIMITS_METRES.getOrDefault(check, LIMIT_METRES);
      job.tolerances.put(check, new Tolerance(new LimitRule.Constant(-limit, limit), "invented"));
    }
    meter(job, "laser", MeasuredQuantity.DISTANCE, new MeterAccuracy(6e-4, 5e-4, 3e-5, 1e-3));
    meter(job, "level", MeasuredQuantity.HEIGHT, new MeterAccuracy(7e-4, 3e-4, 5e-5, 1e-3));
    meter(
        job,
        "tilt",
        MeasuredQuantity.TILT,
        new MeterAccuracy(0.02 * DEGREE, 0.04 * DEGREE, 0, 0.01 * DEGREE));
    meter(job, "tape", MeasuredQuantity.OFFSET, new MeterAccuracy(4e-4, 3e-4, 0, 1e-3));
    for (String feature : PointName.FEATURES) {
      job.pointDefinitionsMetres.put(feature, feature.equals("slab") ? 0.0015 : 0.001);
    }
    return job.build();
  }

  /** Three posts, anchors in one row across, one gutter; the slab under a straightedge. */
  private static Details details() {
    return Details.NONE
        .withMullions(
            List.of(
                new Mullion(1, "M1", 3, OptionalDouble.of(4)),
                new Mullion(1, "M2", 6, OptionalDouble.of(4)),
                new Mullion(4, "M1", 4.5, OptionalDouble.of(4.2))))
        .withAnchors(new Anchors(0.075, 0.080, 0))
        .withGutters(Map.of('A', new Gutter(18, 1.0 / 500, 1)))
        .withFlatness(
            new FlatnessPlan(
                2,
                OptionalDouble.of(6),
                FlatnessPlan.METRIC_STEP_METRES,
                Map.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty()));
  }

  private static void meter(
      InventedJob job, String id, MeasuredQuantity quantity, MeterAccuracy accuracy) {
    job.meters.put(id, new Meter(id, quantity, accuracy, "invented"));
  }

  /** The limits given above, in words. */
  static String otherLimits() {
    return new TreeMap<>(OTHER_LIMITS_METRES)
        .entrySet().stream()
            .map(limit -> Math.round(1e3 * limit.getValue()) + " mm for `" + limit.getKey() + "`")
            .collect(Collectors.joining(", "));
  }

  /** Everything the job's stages ask for that a site can be asked. */
  static SimulatedSurvey draw(Job job, long seed) {
    return draw(job, seed, true);
  }

  /** The same of a site drawn alike, measured by perfect meters in perfect hands. */
  static SimulatedSurvey withoutErrors(Job job, long seed) {
    return draw(job, seed, false);
  }

  private static SimulatedSurvey draw(Job job, long seed, boolean withErrors) {
    NormalDraws draws = new NormalDraws(seed);
    Set<PointName> points = new TreeSet<>();
    job.stages().forEach(stage -> targets(job, stage).forEach(t -> points.addAll(t.points())));
    SimulatedSite site = site(job, points, draws.split());
    SimulatedCrew crew =
        withErrors
            ? SimulatedCrew.marking(job.pointDefinitionsMetres(), points, draws.split())
            : SimulatedCrew.EXACT;
    List<Reading> readings = new ArrayList<>();
    for (Stage stage : job.stages()) {
      List<Sighting> first = new ArrayList<>();
      List<Sighting> second = new ArrayList<>();
      for (Target target : targets(job, stage)) {
        first.addAll(sightings(target));
        if (isRepeated(target)) {
          second.addAll(sightings(target));
        }
      }
      for (List<Sighting> sightings : List.of(first, second)) {
        String name = stage.id() + (sightings == first ? "-a" : "-b");
        SimulatedSession session =
            new SimulatedSession(
                site,
                crew,
                withErrors ? meters(job, draws.split()) : perfect(job),
                name,
                stage.id(),
                InventedJob.AT);
        readings.addAll(session.read(sightings, seed * 64 + readings.size()));
      }
    }
    double share = withErrors ? Normal.cdf(new NormalDraws(~seed).next()) : 0.5;
    double warmth =
        job.steel().lowestCelsius()
            + share * (job.steel().highestCelsius() - job.steel().lowestCelsius());
    return new SimulatedSurvey(site, readings, warmth);
  }

  private static List<Target> targets(Job job, Stage stage) {
    SimulatedSession probe =
        new SimulatedSession(
            SimulatedSite.asDesigned(job.setOut()),
            SimulatedCrew.EXACT,
            Map.of(),
            "probe",
            stage.id(),
            InventedJob.AT);
    return Stream.concat(
            MeasuringList.of(job.setOut(), stage).targets().stream(),
            stage.id().equals("survey") ? alongSides(job).stream() : Stream.of())
        .filter(target -> isSimulated(probe, target))
        .toList();
  }

  /** Distances to a place in the middle of each side 18 m long, which no list asks for. */
  private static List<Target> alongSides(Job job) {
    List<Target> targets = new ArrayList<>();
    for (PointName point : job.setOut().slab().levelPoints()) {
      boolean onSide = new Outline(job.setOut().slab()).isOn(job.setOut().position(point).plan());
      if (point.feature().equals("slab") && onSide && point.placeInMetres().isPresent()) {
        for (String corner : job.setOut().slab().cornerNames()) {
          targets.add(Target.distance(point, new PointName("slab", corner, "")));
        }
      }
    }
    return targets;
  }

  /** Not questions, and not what the plan places nowhere. */
  private static boolean isSimulated(SimulatedSession probe, Target target) {
    try {
      return Double.isFinite(probe.trueValue(Sighting.of(target, "")));
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  private static SimulatedSite site(Job job, Set<PointName> points, NormalDraws draws) {
    SimulatedSite site = SimulatedSite.asDesigned(job.setOut());
    Set<PointName> shifted = new TreeSet<>();
    points.forEach(point -> shifted.add(SimulatedSite.shiftedBy(point)));
    for (PointName point : shifted) {
      site =
          site.withShift(
              point,
              new Position(
                  draws.next(SHIFT_METRES), draws.next(SHIFT_METRES), draws.next(SHIFT_METRES)));
    }
    for (int number : job.setOut().portalFrameNumbers()) {
      for (char letter : new char[] {'A', 'B'}) {
        site = site.withColumn(new GridMark(letter, number), column(job, draws));
      }
    }
    for (PointName post : posts(job)) {
      double most = job.setOut().postHeightMetres(post) / 1000;
      site = site.withPost(post, standing(most, draws));
    }
    return site;
  }

  private static List<PointName> posts(Job job) {
    List<PointName> posts = new ArrayList<>();
    job.setOut()
        .details()
        .mullions()
        .forEach(mullion -> posts.add(new PointName("mullion", mullion.place(), "")));
    for (Opening opening : job.setOut().openings()) {
      posts.add(new PointName("opening", opening.id(), "left"));
      posts.add(new PointName("opening", opening.id(), "right"));
    }
    return posts;
  }

  private static SimulatedColumn column(Job job, NormalDraws draws) {
    return standing(job.setOut().building().columnStraightnessMetres(), draws);
  }

  private static SimulatedColumn standing(double most, NormalDraws draws) {
    return new SimulatedColumn(
        draws.next(LEAN_METRES),
        draws.next(LEAN_METRES),
        most * (2 * Normal.cdf(draws.next()) - 1),
        most * (2 * Normal.cdf(draws.next()) - 1));
  }

  private static Map<String, SimulatedMeter> perfect(Job job) {
    Map<String, SimulatedMeter> meters = new LinkedHashMap<>();
    job.meters().keySet().forEach(id -> meters.put(id, SimulatedMeter.PERFECT));
    return meters;
  }

  private static Map<String, SimulatedMeter> meters(Job job, NormalDraws draws) {
    Map<String, SimulatedMeter> meters = new LinkedHashMap<>();
    job.meters()
        .forEach(
            (id, meter) ->
                meters.put(
                    id,
                    meter.quantity() == MeasuredQuantity.HEIGHT
                        ? SimulatedMeter.drawLevel(meter.accuracy(), PLANE_METRES, draws)
                        : SimulatedMeter.draw(meter.accuracy(), draws)));
    return meters;
  }

  private static List<Sighting> sightings(Target target) {
    return switch (target.quantity()) {
      case DISTANCE -> List.of(Sighting.of(target, "laser"));
      case HEIGHT, STAFF -> List.of(Sighting.of(target, "level"));
      case OFFSET, PLUMB_OFFSET -> List.of(Sighting.of(target, "tape"));
      case TILT -> tilts(Sighting.of(target, "tilt").at(TILT_UP_METRES));
      case ATTRIBUTE -> List.of();
    };
  }

  private static List<Sighting> tilts(Sighting tilt) {
    return tilt.target().first().place().startsWith("A")
        ? List.of(tilt.onFace(1), tilt.onFace(2))
        : List.of(tilt.onFace(1));
  }

  private static boolean isRepeated(Target target) {
    return target.quantity() == MeasuredQuantity.HEIGHT
        || (target.quantity() == MeasuredQuantity.DISTANCE
            && target.first().feature().equals("slab"));
  }
}
