package datumpeg.analysis.check;

import datumpeg.analysis.adjust.Adjusted;
import datumpeg.analysis.adjust.AdjustedPlan;
import datumpeg.analysis.adjust.Adjustment;
import datumpeg.analysis.adjust.DistanceNetwork;
import datumpeg.analysis.adjust.MeasuredDistance;
import datumpeg.analysis.adjust.PlanPoint;
import datumpeg.analysis.adjust.Undetermined;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.slip.SlipNetworks;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A figure of four corners in its own plane and the distances taken between them: each as observed,
 * and all adjusted together if they fix the figure.
 *
 * @param plan the adjusted figure, the first corner at the origin and the second on the x axis
 * @param direct each distance as observed, by its target
 * @param notes about what is missing
 * @param tests whether the distances fit together
 */
public record FourCorners(
    Optional<AdjustedPlan> plan,
    DirectValues direct,
    List<Note> notes,
    Optional<Network> network,
    List<Reading> used,
    List<AgreementTest> tests) {

  /**
   * Adjusts a figure.
   *
   * @param name what it is, for notes
   * @param corners as designed, in the figure's own plane, in order around it, by their points
   * @param readings distances between those points
   * @return empty without readings
   */
  public static Optional<FourCorners> of(
      String name, List<PlanPoint> corners, List<Reading> readings, StageReadings stage) {
    List<Reading> used = stage.current(readings);
    return DirectValues.of(used, stage).map(direct -> of(name, corners, used, direct, stage));
  }

  private static FourCorners of(
      String name,
      List<PlanPoint> corners,
      List<Reading> used,
      DirectValues direct,
      StageReadings stage) {
    DistanceNetwork network =
        new DistanceNetwork(
            corners.get(0).name(),
            corners.get(1).name(),
            corners,
            used.stream().map(reading -> distance(reading, stage)).toList(),
            used.stream()
                .flatMap(reading -> reading.target().points().stream())
                .distinct()
                .collect(Collectors.toMap(PointName::text, stage::definitionMetres)));
    Adjustment<AdjustedPlan> adjustment = network.adjust();
    if (adjustment instanceof Adjusted<AdjustedPlan> adjusted) {
      AdjustedPlan plan = adjusted.solution();
      return new FourCorners(
          Optional.of(plan),
          direct,
          List.of(),
          Optional.of(Network.of(name, plan.fit(), used)),
          used,
          SlipNotes.ofNetwork(name, SlipNetworks.of(network), plan.fit(), used, stage).stream()
              .toList());
    }
    List<Note> notes = new ArrayList<>();
    if (adjustment instanceof Undetermined<AdjustedPlan> undetermined) {
      notes.add(missing(name, undetermined, used));
    }
    return new FourCorners(Optional.empty(), direct, notes, Optional.empty(), used, direct.tests());
  }

  private static MeasuredDistance distance(Reading reading, StageReadings stage) {
    return new MeasuredDistance(
        reading.target().first().text(),
        reading.target().second().text(),
        stage.observation(reading));
  }

  private static Note missing(
      String name, Undetermined<AdjustedPlan> undetermined, List<Reading> used) {
    String next =
        TargetWords.all(
            undetermined.missing().stream()
                .map(
                    pair ->
                        Target.parse(MeasuredQuantity.DISTANCE, pair.first() + "-" + pair.second()))
                .toList());
    return new Note(
        Note.Kind.UNDETERMINED,
        "The shape of "
            + name
            + " is not determined: "
            + TargetWords.inSentence(undetermined.reason())
            + "."
            + (next.isEmpty() ? "" : " Measure next: " + next + "."),
        used.stream().map(Reading::id).sorted().toList());
  }

  /** Whether a distance was read. */
  public boolean has(Target target) {
    return direct.values().contains(target.text());
  }

  /** A distance as observed. */
  public Linearised observed(Target target) {
    return direct.values().quantity(target.text());
  }

  /** A distance as adjusted, else as observed; empty if neither is known. */
  public Optional<Linearised> best(Target target) {
    if (plan.isPresent()) {
      return plan.map(
          figure -> figure.linearisedDistance(target.first().text(), target.second().text()));
    }
    return has(target) ? Optional.of(observed(target)) : Optional.empty();
  }
}
