package datumpeg.analysis.check;

import datumpeg.analysis.adjust.Adjustment;
import datumpeg.analysis.adjust.CommonPart;
import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.LeastSquares;
import datumpeg.analysis.adjust.LinearModel;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.adjust.ObservationEquation;
import datumpeg.analysis.adjust.SuspectedSlip;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.JointEstimate;
import datumpeg.analysis.uncertainty.Origin;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/**
 * Values read directly, each from its own readings: one unknown a target, the weighted mean of its
 * readings, with the errors they share known together. As observed, not adjusted to each other.
 *
 * @param values by target text or other name, known together
 * @param readings by the same names
 * @param tests whether the readings of each agree; empty where nothing was read twice
 */
public record DirectValues(
    JointEstimate values, Map<String, List<Reading>> readings, List<AgreementTest> tests) {

  /**
   * Two readings of one target further apart than this probability allows contradict each other.
   */
  public static final double SIGNIFICANCE = 0.05;

  /** Values by their targets' texts. */
  public static Optional<DirectValues> of(List<Reading> used, StageReadings stage) {
    return of(used, stage, reading -> reading.target().text());
  }

  /** Values by names of the caller's; readings of one name read one value. */
  public static Optional<DirectValues> of(
      List<Reading> used, StageReadings stage, Function<Reading, String> name) {
    return of(used, stage, name, Reading::valueSi);
  }

  /** As above, each reading brought to the value it reads by a known part. */
  public static Optional<DirectValues> of(
      List<Reading> used,
      StageReadings stage,
      Function<Reading, String> name,
      ToDoubleFunction<Reading> observed) {
    Map<String, List<Reading>> byTarget = new TreeMap<>();
    used.forEach(
        reading ->
            byTarget.computeIfAbsent(name.apply(reading), key -> new ArrayList<>()).add(reading));
    byTarget.replaceAll((target, of) -> stage.current(of));
    List<ObservationEquation> equations = new ArrayList<>();
    byTarget.forEach(
        (target, of) ->
            of.forEach(
                reading ->
                    equations.add(
                        new ObservationEquation(
                            marked(target, reading, observed.applyAsDouble(reading), stage),
                            Map.of(target, sign(reading)),
                            0))));
    if (equations.isEmpty()) {
      return Optional.empty();
    }
    Adjustment<Fit> adjustment =
        LeastSquares.adjust(new LinearModel(List.copyOf(byTarget.keySet()), equations));
    return adjustment
        .complete()
        .map(fit -> new DirectValues(fit.parameters(), byTarget, tests(fit, byTarget, observed)));
  }

  /**
   * With what the marks may be beside their points: one error a value, as no two values here meet
   * one mark in one direction.
   */
  private static Observation marked(
      String name, Reading reading, double value, StageReadings stage) {
    Observation observed = stage.observation(reading, value);
    if (reading.target().quantity() == MeasuredQuantity.TILT) {
      return observed;
    }
    double definition =
        Estimate.combine(
            reading.target().points().stream().mapToDouble(stage::definitionMetres).toArray());
    return definition == 0
        ? observed
        : observed.withCommonPart(
            new CommonPart("marks of " + name, definition, Origin.DEFINITION));
  }

  /** On face 2 a tilt meter reads the lean with the other sign. */
  private static double sign(Reading reading) {
    return reading.face() == 2 ? -1 : 1;
  }

  public List<Reading> readingsOf(List<String> targets) {
    return targets.stream()
        .flatMap(target -> readings.getOrDefault(target, List.of()).stream())
        .toList();
  }

  /** One test of all targets read more than once: the largest slip statistic, after Bonferroni. */
  private static List<AgreementTest> tests(
      Fit fit, Map<String, List<Reading>> byTarget, ToDoubleFunction<Reading> observed) {
    if (fit.degreesOfFreedom() == 0) {
      return List.of();
    }
    Optional<SuspectedSlip> greatest = fit.suspectedSlip(1);
    return List.of(
        new AgreementTest(
            fit.observations().stream()
                .map(observation -> observation.observation().id())
                .collect(Collectors.toSet()),
            greatest.map(SuspectedSlip::probability).orElse(1.0),
            AgreementTest.Reach.NAMED,
            () ->
                greatest.map(slip -> contradictions(slip, byTarget, observed)).orElse(List.of())));
  }

  private static List<Note> contradictions(
      SuspectedSlip slip, Map<String, List<Reading>> byTarget, ToDoubleFunction<Reading> observed) {
    return byTarget.values().stream()
        .filter(of -> of.stream().anyMatch(r -> slip.observationIds().contains(r.id())))
        .map(of -> SlipNotes.contradiction(of, r -> sign(r) * observed.applyAsDouble(r)))
        .toList();
  }
}
