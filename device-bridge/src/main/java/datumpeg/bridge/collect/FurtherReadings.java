package datumpeg.bridge.collect;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.bridge.jobs.StoredJob;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which readings would decide what is undecided when the list is done: a tilt's second face, then
 * repeats, and only as long as they help. Only the independent part of the uncertainty shrinks with
 * repeats, so where the part that readings share leaves an outcome undecided none are asked for.
 * Immutable.
 */
public record FurtherReadings(StoredJob job, String stage) {
  /**
   * Past so many readings of a target a further one is not worth the walk. Common practice, no
   * source.
   */
  private static final int MOST_READINGS = 4;

  /** Of a normal distribution, one-sided 95 %, the probability at which an outcome is accepted. */
  private static final double DECIDING = 1.645;

  /** What to ask for, in the order of the outcomes; empty when nothing would help. */
  public List<Wanted> wanted() {
    Map<String, Reading> byId = new HashMap<>();
    job.readings().forEach(reading -> byId.put(reading.id(), reading));
    Set<Wanted> wanted = new LinkedHashSet<>();
    job.findings().stages().stream()
        .filter(found -> found.stage().equals(stage))
        .flatMap(found -> found.outcomes().stream())
        .filter(outcome -> outcome.is(Verdict.UNDECIDED) && !outcome.stale())
        .forEach(
            outcome ->
                wanted.addAll(
                    of(
                        outcome,
                        outcome.readingIds().stream()
                            .filter(byId::containsKey)
                            .map(byId::get)
                            .toList())));
    return List.copyOf(wanted);
  }

  private List<Wanted> of(Outcome outcome, List<Reading> readings) {
    // A level belongs to its set-up, which is gone when the list is done.
    List<Reading> repeatable =
        readings.stream()
            .filter(
                reading ->
                    reading.target().quantity() == MeasuredQuantity.TILT
                        || reading.target().quantity() == MeasuredQuantity.DISTANCE)
            .filter(reading -> isDirect(outcome, reading))
            .toList();
    List<Wanted> secondFaces = new ArrayList<>();
    for (Reading reading : repeatable) {
      if (reading.target().quantity() == MeasuredQuantity.TILT
          && repeatable.stream()
              .noneMatch(other -> other.target().equals(reading.target()) && other.face() == 2)) {
        secondFaces.add(wanted(reading.target(), 2));
      }
    }
    return secondFaces.isEmpty() ? repeats(outcome, repeatable) : secondFaces;
  }

  /** A network uses many readings for one outcome; only those of its own target are repeated. */
  private static boolean isDirect(Outcome outcome, Reading reading) {
    Target target = reading.target();
    String place = outcome.target().replaceAll("/.*", "");
    return target.quantity() == MeasuredQuantity.TILT
        ? target.text().endsWith("." + outcome.target())
        : List.of(place.split("-", -1))
            .equals(target.points().stream().map(point -> point.place()).toList());
  }

  private List<Wanted> repeats(Outcome outcome, List<Reading> readings) {
    List<Wanted> wanted = new ArrayList<>();
    for (Reading reading : readings) {
      long taken =
          readings.stream().filter(other -> other.target().equals(reading.target())).count();
      int faces = reading.target().quantity() == MeasuredQuantity.TILT ? 2 : 1;
      if (taken < (long) MOST_READINGS * faces && oneMoreMayDecide(outcome, reading)) {
        wanted.add(wanted(reading.target(), reading.face()));
      }
    }
    return wanted;
  }

  private boolean oneMoreMayDecide(Outcome outcome, Reading reading) {
    MeterAccuracy accuracy =
        job.jobAsMeasured().meter(reading.meter(), reading.target().quantity()).accuracy();
    double scaled = accuracy.perMetre() * reading.valueSi();
    double common =
        reading.target().quantity() == MeasuredQuantity.TILT
            ? 0 // both faces were read: the zero error cancels
            : accuracy.common() * accuracy.common() + scaled * scaled;
    double independent = accuracy.independentVariance();
    double variance = outcome.standardUncertainty() * outcome.standardUncertainty();
    double shared =
        independent + common == 0 ? variance : variance * common / (independent + common);
    double least = Math.sqrt(shared + (variance - shared) / MOST_READINGS);
    return margin(outcome) > DECIDING * least;
  }

  /** How far the deviation is from the limit it is nearest to. */
  private static double margin(Outcome outcome) {
    return outcome.limits().map(limits -> margin(limits, outcome.deviation())).orElse(0.0);
  }

  private static double margin(Limits limits, double deviation) {
    double upper = Math.abs(limits.upper().orElse(Double.POSITIVE_INFINITY) - deviation);
    double lower = Math.abs(limits.lower().orElse(Double.NEGATIVE_INFINITY) - deviation);
    return Math.min(upper, lower);
  }

  private Wanted wanted(Target target, int face) {
    return new Wanted(target, face, MeasuringList.expectedSi(job.job().setOut(), target));
  }
}
