package datumpeg.analysis.check;

import datumpeg.analysis.adjust.CommonPart;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Origin;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Predicate;

/**
 * One stage's readings in force, each target's latest round only, with the accuracy of each.
 *
 * <p>Accuracy of a reading: see {@link MeterAccuracy}. What is read is the mark that stands for a
 * point; how far the mark is beside its point (definitional uncertainty, VIM 2.27) is one unknown
 * for each marked point and direction, which all readings of that mark share and no repeat shrinks.
 */
public final class StageReadings {
  /** No reading is better than this: keeps weights finite for a meter stated as exact. */
  private static final double LEAST_STANDARD_UNCERTAINTY = 1e-7;

  private final Job job;
  private final List<Reading> latest;
  private final Rounds rounds;
  private final SlipEffects effects;

  public StageReadings(Job job, List<Reading> ofStage, Rounds rounds) {
    this.job = job;
    this.rounds = rounds;
    this.effects = SlipEffects.NONE;
    List<Reading> found = new ArrayList<>(ofStage.isEmpty() ? ofStage : latest(ofStage));
    found.sort(Comparator.comparing(Reading::id));
    this.latest = Collections.unmodifiableList(found);
  }

  private static List<Reading> latest(List<Reading> ofStage) {
    int round = ofStage.get(0).round();
    if (ofStage.stream().allMatch(reading -> reading.round() == round)) {
      return ofStage;
    }
    Map<Target, Integer> latestRound = new HashMap<>();
    ofStage.forEach(reading -> latestRound.merge(reading.target(), reading.round(), Math::max));
    return ofStage.stream()
        .filter(reading -> latestRound.getOrDefault(reading.target(), 0) == reading.round())
        .toList();
  }

  private StageReadings(StageReadings like, List<Reading> latest, SlipEffects effects) {
    this.job = like.job;
    this.rounds = like.rounds;
    this.latest = latest;
    this.effects = effects;
  }

  /** All but one. */
  public StageReadings without(String readingId) {
    return new StageReadings(
        this, latest.stream().filter(reading -> !reading.id().equals(readingId)).toList(), effects);
  }

  /** The same readings, with what those in doubt may have moved outcomes by. */
  public StageReadings doubting(SlipEffects effects) {
    return new StageReadings(this, latest, effects);
  }

  /** The readings of targets that fit, ordered by their ids. */
  public List<Reading> where(Predicate<Target> fits) {
    List<Reading> found = new ArrayList<>();
    for (Reading reading : latest) {
      if (fits.test(reading.target())) {
        found.add(reading);
      }
    }
    return Collections.unmodifiableList(found);
  }

  public List<Reading> all() {
    return latest;
  }

  public Evidence evidence(List<Reading> readings) {
    return Evidence.of(readings, rounds, effects);
  }

  /** Those of a network that go together: none from before a move that was measured again. */
  public List<Reading> current(List<Reading> network) {
    return rounds.current(network);
  }

  /** Whether something under any of them was moved since. */
  public boolean anyOutdated(List<Reading> readings) {
    return readings.stream().anyMatch(rounds::isOutdated);
  }

  /** A reading of a length as an observation in metres. */
  public Observation observation(Reading reading) {
    return observation(reading, reading.valueSi());
  }

  /**
   * A reading as an observation of another value with the same errors, such as one less a known
   * part.
   */
  public Observation observation(Reading reading, double observed) {
    Meter meter = job.meter(reading.meter(), reading.target().quantity());
    MeterAccuracy accuracy = meter.accuracy();
    return new Observation(
        reading.id(), observed, own(accuracy), commonParts(reading, accuracy, reading.valueSi()));
  }

  /** A distance not taken yet, as it would be read with the meter and in the session of another. */
  public Observation foreseen(Reading like, double distanceMetres) {
    MeterAccuracy accuracy = job.meter(like.meter(), like.target().quantity()).accuracy();
    return new Observation(
        "foreseen", distanceMetres, own(accuracy), commonParts(like, accuracy, distanceMetres));
  }

  /** How far a mark may be beside its point: standard uncertainty in each direction, in metres. */
  public double definitionMetres(PointName point) {
    return job.pointDefinitionMetres(point);
  }

  /**
   * An observation that meets the mark of a point, with that mark's own error as a shared one.
   *
   * @param direction the error's, such as "along": errors in different directions are independent
   * @param sign how the observation answers to the mark moving that way, 1 or −1
   */
  public Observation marked(Observation observed, PointName point, String direction, int sign) {
    double definition = definitionMetres(point);
    return definition == 0
        ? observed
        : observed.withCommonPart(
            new CommonPart(
                "mark of " + point.text() + " " + direction, sign * definition, Origin.DEFINITION));
  }

  /** What forgetting the hook or end piece of their meters is wrong by, as far as the job says. */
  public List<Double> edgesMetres(List<Reading> readings) {
    return readings.stream()
        .map(reading -> job.meter(reading.meter(), reading.target().quantity()))
        .flatMapToDouble(meter -> meter.edgeMetres().stream())
        .distinct()
        .sorted()
        .boxed()
        .toList();
  }

  /** Standard uncertainty, in radians, of each plane tilt of a level's set-up. */
  public double planeTiltRadians(Reading reading) {
    return job.meter(reading.meter(), reading.target().quantity()).accuracy().perMetre();
  }

  /**
   * A length that steel spans, brought from the day of the reading to 20 °C. The temperature is one
   * unknown for all of the stage's steel: no repeat shrinks it.
   *
   * @param steelMetres how much of the length is steel
   */
  public Estimate atReference(Estimate measured, double steelMetres) {
    return measured
        .shifted(-job.steel().strain(stageId()) * steelMetres)
        .widened(job.steel().strainUncertainty(stageId()) * steelMetres, Origin.TEMPERATURE);
  }

  /** What the temperature of the steel does to a length, to stand beside it; empty for nothing. */
  public String temperatureWords(double steelMetres) {
    double longer = job.steel().strain(stageId()) * steelMetres;
    double expanded =
        Estimate.COVERAGE_FACTOR * job.steel().strainUncertainty(stageId()) * steelMetres;
    OptionalDouble read = job.steel().read(stageId());
    if (read.isPresent()) {
      return "brought from "
          + LengthDisplay.decimal(read.getAsDouble(), 0)
          + " °C to 20 °C by "
          + Millimetres.with(-longer, expanded);
    }
    return expanded == 0
        ? ""
        : "the steel's temperature was not read: U holds " + Millimetres.of(expanded) + " for it";
  }

  private String stageId() {
    return latest.isEmpty() ? "" : latest.get(0).stage();
  }

  private static double own(MeterAccuracy accuracy) {
    return Math.max(Math.sqrt(accuracy.independentVariance()), LEAST_STANDARD_UNCERTAINTY);
  }

  private List<CommonPart> commonParts(
      Reading reading, MeterAccuracy accuracy, double lengthMetres) {
    String meter = reading.meter() + "|" + reading.session();
    List<CommonPart> parts = new ArrayList<>();
    if (accuracy.common() > 0) {
      parts.add(new CommonPart(meter + "|zero", accuracy.common()));
    }
    if (accuracy.perMetre() > 0 && reading.target().quantity() == MeasuredQuantity.DISTANCE) {
      parts.add(new CommonPart(meter + "|scale", accuracy.perMetre() * lengthMetres));
    }
    return parts;
  }
}
