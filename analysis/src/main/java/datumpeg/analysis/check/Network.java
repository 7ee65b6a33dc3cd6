package datumpeg.analysis.check;

import datumpeg.analysis.adjust.AdjustedObservation;
import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.GlobalTest;
import datumpeg.analysis.measuring.Reading;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/**
 * Readings adjusted together, observed and adjusted kept apart, and whether they fit.
 *
 * @param name what it is a network of, such as "the slab"
 * @param degreesOfFreedom observations less unknowns
 * @param varianceFactor s₀² = vᵀPv/(n − u), expected 1; empty without redundancy
 * @param probability of at least this misclosure if nothing slipped; empty without redundancy
 */
public record Network(
    String name,
    int degreesOfFreedom,
    OptionalDouble varianceFactor,
    OptionalDouble probability,
    List<AdjustedReading> readings) {
  public Network {
    readings = List.copyOf(readings);
  }

  public static Network of(String name, Fit fit, List<Reading> readings) {
    return of(name, fit, readings, reading -> 1);
  }

  /**
   * As above, told in metres where the network has another quantity.
   *
   * @param metres how many metres one unit of a reading is told as
   */
  public static Network of(
      String name, Fit fit, List<Reading> readings, ToDoubleFunction<Reading> metres) {
    Map<String, Reading> byId =
        readings.stream().collect(Collectors.toMap(Reading::id, Function.identity()));
    return new Network(
        name,
        fit.degreesOfFreedom(),
        number(fit, GlobalTest::varianceFactor),
        number(fit, GlobalTest::probability),
        fit.observations().stream()
            .map(observation -> adjusted(observation, byId, metres))
            .toList());
  }

  private static OptionalDouble number(Fit fit, Function<GlobalTest, Double> of) {
    return fit.test().map(test -> OptionalDouble.of(of.apply(test))).orElse(OptionalDouble.empty());
  }

  private static AdjustedReading adjusted(
      AdjustedObservation observation,
      Map<String, Reading> byId,
      ToDoubleFunction<Reading> metres) {
    Reading reading = byId.get(observation.observation().id());
    double scale = reading == null ? 1 : metres.applyAsDouble(reading);
    OptionalDouble slip = observation.smallestDetectableSlip();
    return new AdjustedReading(
        observation.observation().id(),
        reading == null ? "" : reading.target().text(),
        scale * observation.observation().observed(),
        scale * observation.adjusted(),
        scale * observation.residual(),
        observation.redundancy(),
        observation.standardizedResidual(),
        slip.isPresent() ? OptionalDouble.of(Math.abs(scale) * slip.getAsDouble()) : slip);
  }
}
