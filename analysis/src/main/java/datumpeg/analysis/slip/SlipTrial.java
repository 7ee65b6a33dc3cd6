package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.ChangeEffects;
import datumpeg.analysis.adjust.CommonPart;
import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.GlobalTest;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.stat.ChiSquared;
import datumpeg.analysis.stat.Normal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Tries one slip: foretold in closed form, and by adjusting again. */
final class SlipTrial {
  private static final String OFFSET = "offset of a slip";

  /** Standard deviation of an offset that may be anything, in metres or radians. */
  private static final double ANYTHING = 100;

  /**
   * A shared offset that exceeds the independent parts by more than this drowns them in rounding.
   */
  private static final double MOST_RATIO = 3e5;

  /** Slip statistics correlated beyond this are one test. */
  private static final double ONE_TEST = 1 - 1e-6;

  /** A change that shows less than this share of itself shows nothing. */
  private static final double LEAST_CHECK = 1e-9;

  private final SlipNetwork network;
  private final List<Observation> observations;
  private final GlobalTest test;
  private final ChangeEffects effects;
  private final SlipOptions options;
  private final int readingCount;
  private final int singleTests;
  private final Map<String, Double> standardUncertainties = new HashMap<>();

  SlipTrial(
      SlipNetwork network,
      GlobalTest test,
      ChangeEffects effects,
      List<SlipReading> readings,
      SlipOptions options) {
    this.network = network;
    this.observations = network.observations();
    this.test = test;
    this.effects = effects;
    this.options = options;
    this.readingCount = readings.size();
    this.singleTests = distinct(readings);
    observations.forEach(o -> standardUncertainties.put(o.id(), o.standardUncertainty()));
  }

  /** Score in closed form; infinite for a slip that would not show. */
  double foreseen(Slip slip) {
    Map<String, Double> direction = direction(slip);
    double shown = effects.product(direction, direction);
    if (shown <= LEAST_CHECK * stated(direction)) {
      return Double.POSITIVE_INFINITY;
    }
    if (!slip.hasUnknownOffset()) {
      return effects.squareSum(direction);
    }
    double pull = effects.pull(direction);
    return effects.squareSum() - pull * pull / shown + Suspicion.ONE_MORE_QUANTITY;
  }

  private double stated(Map<String, Double> direction) {
    double sum = 0;
    for (Map.Entry<String, Double> entry : direction.entrySet()) {
      double relative = entry.getValue() / standardUncertainties.getOrDefault(entry.getKey(), 1.0);
      sum += relative * relative;
    }
    return sum;
  }

  /** The change of the observations, or the direction of an unknown offset. */
  static Map<String, Double> direction(Slip slip) {
    Map<String, Double> direction = new HashMap<>();
    for (SlipReading reading : slip.readings()) {
      double by =
          slip.hasUnknownOffset()
              ? 1
              : slip.instead().getOrDefault(reading.id(), reading.value()) - reading.value();
      direction.put(reading.id(), reading.sign() * by);
    }
    return direction;
  }

  /** The slip tried by adjusting again; empty if that fails or an offset is none of its kind. */
  Optional<Suspicion> of(Slip slip) {
    Optional<Fit> fit = network.fit(changed(slip));
    Optional<GlobalTest> after = fit.flatMap(Fit::test);
    return after.isEmpty() ? Optional.empty() : of(slip, fit.get(), after.get());
  }

  private Optional<Suspicion> of(Slip slip, Fit fit, GlobalTest after) {
    List<Slip> parts = new ArrayList<>();
    Map<String, Double> instead = new LinkedHashMap<>();
    List<Double> offsets = new ArrayList<>();
    for (Slip part : slip.parts()) {
      if (part instanceof Slip.Offset unknown) {
        double offset = offset(unknown, fit);
        if (unknown.readings().size() > 1 && !isEdge(unknown, offset)) {
          return Optional.empty();
        }
        parts.add(isEdge(unknown, offset) ? unknown.asEdge() : unknown);
        unknown.readings().forEach(read -> instead.put(read.id(), read.value() - offset));
        offsets.add(offset);
      } else {
        parts.add(part);
        instead.putAll(part.instead());
      }
    }
    Slip told = parts.size() == 1 ? parts.get(0) : new Slip.Both(parts.get(0), parts.get(1));
    return Optional.of(suspicion(told, instead, after.squareSum(), offsets));
  }

  private boolean isEdge(Slip.Offset slip, double offset) {
    return !slip.readings().get(0).isTilt()
        && Math.abs(offset) >= options.leastEdgeMetres()
        && Math.abs(offset) <= options.mostEdgeMetres();
  }

  /** Reading less truth. */
  private double offset(Slip.Offset slip, Fit fit) {
    SlipReading first = slip.readings().get(0);
    return slip.readings().size() == 1
        ? -first.sign() * fit.observation(first.id()).residual()
        : anything(slip) * fit.commonEffect(shared(slip)).value();
  }

  private static String shared(Slip slip) {
    return OFFSET + " of " + slip.readings().get(0).id();
  }

  private double anything(Slip slip) {
    double least =
        observations.stream()
            .filter(o -> slip.readings().stream().anyMatch(r -> r.id().equals(o.id())))
            .mapToDouble(Observation::independentStandardUncertainty)
            .min()
            .orElse(1);
    return Math.min(ANYTHING, MOST_RATIO * least);
  }

  private Suspicion suspicion(
      Slip slip, Map<String, Double> instead, double squareSum, List<Double> offsets) {
    double drop = Math.max(0, test.squareSum() - squareSum);
    return new Suspicion(
        slip,
        instead,
        test.squareSum(),
        squareSum,
        test.degreesOfFreedom() - offsets.size(),
        offsets,
        chance(slip, drop));
  }

  /** Of so great a drop among all slips of its family, or all pairs of such slips. */
  private double chance(Slip slip, double drop) {
    List<Slip> parts = slip.parts();
    double chance =
        parts.size() == 1
            ? tests(slip) * Normal.twoSided(Math.sqrt(drop))
            : tests(parts.get(0)) * tests(parts.get(1)) / 2.0 * ChiSquared.survival(drop, 2);
    return Math.min(1, chance);
  }

  private List<Observation> changed(Slip slip) {
    Map<String, SlipReading> touched = new HashMap<>();
    Map<String, Slip> by = new HashMap<>();
    for (Slip part : slip.parts()) {
      part.readings().forEach(reading -> touched.put(reading.id(), reading));
      part.readings().forEach(reading -> by.put(reading.id(), part));
    }
    List<Observation> changed = new ArrayList<>(observations.size());
    for (Observation observation : observations) {
      SlipReading reading = touched.get(observation.id());
      Slip part = by.get(observation.id());
      changed.add(
          reading == null || part == null ? observation : changed(observation, reading, part));
    }
    return changed;
  }

  /** One reading of unknown offset says nothing; several still say something of each other. */
  private Observation changed(Observation observation, SlipReading reading, Slip slip) {
    if (slip.hasUnknownOffset()) {
      return slip.readings().size() == 1
          ? Observation.independent(observation.id(), observation.observed(), ANYTHING)
          : observation.withCommonPart(
              new CommonPart(shared(slip), reading.sign() * anything(slip)));
    }
    double instead = slip.instead().getOrDefault(reading.id(), reading.value());
    int turn = slip.turnsTheMeter() ? -1 : 1;
    return new Observation(
        observation.id(),
        observation.observed() + reading.sign() * (instead - reading.value()),
        observation.independentStandardUncertainty(),
        observation.commonParts().stream()
            .map(part -> new CommonPart(part.group(), turn * part.effect(), part.origin()))
            .toList());
  }

  /** How many slips of its family can be told apart: with one degree of freedom only one. */
  private int tests(Slip slip) {
    if (test.degreesOfFreedom() == 1) {
      return 1;
    }
    return slip.readings().size() == 1
        ? singleTests
        : Math.max(1, readingCount * (readingCount - 1) / 2);
  }

  private int distinct(List<SlipReading> readings) {
    List<Map<String, Double>> distinct = new ArrayList<>();
    for (SlipReading reading : readings) {
      Map<String, Double> one = Map.of(reading.id(), 1.0);
      if (effects.product(one, one) > 0 && distinct.stream().noneMatch(d -> alike(d, one))) {
        distinct.add(one);
      }
    }
    return Math.max(1, distinct.size());
  }

  private boolean alike(Map<String, Double> one, Map<String, Double> other) {
    double scale = Math.sqrt(effects.product(one, one) * effects.product(other, other));
    return Math.abs(effects.product(one, other)) > ONE_TEST * scale;
  }
}
