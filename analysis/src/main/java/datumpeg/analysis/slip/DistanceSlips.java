package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.AdjustedPlan;
import datumpeg.analysis.adjust.DistanceNetwork;
import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.MeasuredDistance;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.adjust.PlanPoint;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Distances in a plane. Closed forms are taken at the drawing, which no slip has bent. */
record DistanceSlips(DistanceNetwork network) implements SlipNetwork {
  @Override
  public List<Observation> observations() {
    return network.distances().stream().map(MeasuredDistance::observation).toList();
  }

  @Override
  public Optional<Fit> fit(List<Observation> changed) {
    List<MeasuredDistance> distances = new ArrayList<>();
    for (int i = 0; i < changed.size(); i++) {
      distances.add(with(network.distances().get(i), changed.get(i)));
    }
    return adjusted(distances);
  }

  private Optional<Fit> adjusted(List<MeasuredDistance> distances) {
    return new DistanceNetwork(network.origin(), network.axis(), network.approximate(), distances)
        .adjust()
        .complete()
        .map(AdjustedPlan::fit);
  }

  private static MeasuredDistance with(MeasuredDistance distance, Observation observation) {
    return new MeasuredDistance(distance.from(), distance.to(), observation);
  }

  @Override
  public Optional<Fit> foresight() {
    return adjusted(asDrawn());
  }

  /** What would have been read if everything stood where it was drawn. */
  private List<MeasuredDistance> asDrawn() {
    return network.distances().stream()
        .map(
            distance ->
                with(
                    distance,
                    valued(distance.observation(), drawn(distance.from(), distance.to()))))
        .toList();
  }

  private PlanPoint point(String name) {
    return network.approximate().stream()
        .filter(point -> point.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static Observation valued(Observation observation, double value) {
    return new Observation(
        observation.id(),
        value,
        observation.independentStandardUncertainty(),
        observation.commonParts());
  }

  private double drawn(String fromName, String toName) {
    PlanPoint from = point(fromName);
    PlanPoint to = point(toName);
    double dx = to.xMetres() - from.xMetres();
    double dy = to.yMetres() - from.yMetres();
    return Math.sqrt(dx * dx + dy * dy);
  }

  /** All pairs with both ends among those of the suspects. */
  @Override
  public Optional<FurtherReadings> further(Set<String> suspects) {
    double rough = SlipNetworks.rough(observations());
    Set<String> ends = new LinkedHashSet<>();
    for (MeasuredDistance taken : network.distances()) {
      if (suspects.contains(taken.observation().id())) {
        ends.add(taken.from());
        ends.add(taken.to());
      }
    }
    List<String> names =
        network.approximate().stream().map(PlanPoint::name).filter(ends::contains).toList();
    List<FurtherReadings.Candidate> candidates = new ArrayList<>();
    List<MeasuredDistance> distances = new ArrayList<>(asDrawn());
    for (int i = 0; i < names.size(); i++) {
      for (int j = i + 1; j < names.size(); j++) {
        String from = names.get(i);
        String to = names.get(j);
        String id = SlipNetworks.FURTHER + from + "-" + to;
        candidates.add(new FurtherReadings.Candidate(id, from + "-" + to, taken(from, to)));
        distances.add(
            new MeasuredDistance(from, to, Observation.independent(id, drawn(from, to), rough)));
      }
    }
    return adjusted(distances)
        .map(fit -> new FurtherReadings(candidates, fit, rough, SlipNetworks.best(observations())));
  }

  private boolean taken(String from, String to) {
    return network.distances().stream()
        .anyMatch(
            d ->
                (d.from().equals(from) && d.to().equals(to))
                    || (d.from().equals(to) && d.to().equals(from)));
  }
}
