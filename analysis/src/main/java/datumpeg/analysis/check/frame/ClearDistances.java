package datumpeg.analysis.check.frame;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.DirectValues;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Distances straight across the building: clear span between columns, and whether the column lines
 * run parallel (clear span at end n − at end 1).
 */
final class ClearDistances {
  private final Job job;
  private final OutcomeMaker outcomes;

  ClearDistances(Job job, OutcomeMaker outcomes) {
    this.job = job;
    this.outcomes = outcomes;
  }

  CheckResult of(StageReadings stage, FrameNetwork network) {
    List<Reading> used = stage.where(ClearDistances::isAcross);
    Optional<DirectValues> direct = DirectValues.of(used, stage, r -> name(r.target()));
    if (direct.isEmpty()) {
      return CheckResult.of(List.of(), List.of(), List.of());
    }
    DirectValues values = direct.get();
    List<Outcome> found = new ArrayList<>();
    for (int number : job.setOut().portalFrameNumbers()) {
      for (String feature : List.of("base", "eave")) {
        clearSpan(values, number, feature, stage, network).ifPresent(found::add);
      }
    }
    parallel(values, stage).ifPresent(found::add);
    return CheckResult.of(found, List.of(), used).with(values.tests());
  }

  /** Whether a target is a distance between the columns of one frame, at their feet or eaves. */
  static boolean isClearSpan(Target target) {
    return isAcross(target) && List.of("base", "eave").contains(target.first().feature());
  }

  private static boolean isAcross(Target target) {
    if (target.quantity() != MeasuredQuantity.DISTANCE) {
      return false;
    }
    PointName one = target.first();
    PointName other = target.second();
    return List.of("base", "eave", "line").contains(one.feature())
        && one.feature().equals(other.feature())
        && one.part().equals(other.part())
        && one.gridMark().map(GridMark::number).equals(other.gridMark().map(GridMark::number))
        && one.gridMark().isPresent();
  }

  private static String name(Target target) {
    return target.first().gridMark().orElseThrow().number() + "/" + target.first().feature();
  }

  private Optional<Outcome> clearSpan(
      DirectValues values, int number, String feature, StageReadings stage, FrameNetwork network) {
    String name = number + "/" + feature;
    if (!values.values().contains(name)) {
      return Optional.empty();
    }
    List<Reading> readings = values.readingsOf(List.of(name));
    Estimate observed = values.values().estimate(name);
    Estimate decided =
        network.agrees() && network.holds(readings)
            ? network.span(feature, number).map(Linearised::estimate).orElse(observed)
            : observed;
    double nominal = job.setOut().clearSpanMetres();
    boolean aloft = feature.equals("eave");
    Outcome outcome =
        outcomes.signed(
            "clear-span",
            name,
            OptionalDouble.of(nominal),
            aloft ? stage.atReference(decided, nominal) : decided,
            nominal,
            stage.evidence(readings));
    return Optional.of(
        outcome
            .withAside(Adjusted.aside(observed.shifted(-nominal), decided.shifted(-nominal)))
            .withFurtherAside(aloft ? stage.temperatureWords(nominal) : ""));
  }

  private Optional<Outcome> parallel(DirectValues values, StageReadings stage) {
    String first = "1/line";
    String last = job.setOut().building().portalFrameCount() + "/line";
    if (!values.values().contains(first) || !values.values().contains(last)) {
      return Optional.empty();
    }
    Linearised difference = values.values().quantity(last).minus(values.values().quantity(first));
    return Optional.of(
        outcomes.signedWithAside(
            "line-parallel",
            "A-B",
            difference.estimate(),
            job.setOut().clearSpanMetres(),
            stage.evidence(values.readingsOf(List.of(first, last))),
            ""));
  }
}
