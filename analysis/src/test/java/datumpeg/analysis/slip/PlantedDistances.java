package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.DistanceNetwork;
import datumpeg.analysis.adjust.MeasuredDistance;
import datumpeg.analysis.adjust.PlanPoint;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.WrittenValue;
import datumpeg.analysis.simulate.NormalDraws;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/** Slips planted in the distances of an invented slab of six points, 8 mm off the drawing. */
final class PlantedDistances {
  static final double INDEPENDENT = 0.0015;
  static final double COMMON = 0.001;
  private static final Map<String, double[]> SLAB = slab();

  private PlantedDistances() {}

  private static Map<String, double[]> slab() {
    Map<String, double[]> slab = new LinkedHashMap<>();
    for (int number = 1; number <= 3; number++) {
      slab.put("slab.A" + number, new double[] {6.5 * (number - 1), 0});
      slab.put("slab.B" + number, new double[] {6.5 * (number - 1), 9});
    }
    return slab;
  }

  /** Fifteen distances of a slab of six points, in the given number of sets of all fifteen. */
  static List<SlipReading> distances(NormalDraws draws, int sets) {
    Map<String, double[]> truth = new HashMap<>();
    SLAB.forEach(
        (name, at) ->
            truth.put(name, new double[] {at[0] + draws.next(0.008), at[1] + draws.next(0.008)}));
    List<String> names = List.copyOf(SLAB.keySet());
    List<SlipReading> readings = new ArrayList<>();
    for (int set = 1; set <= sets; set++) {
      double common = draws.next(COMMON);
      for (int i = 0; i < names.size(); i++) {
        for (int j = i + 1; j < names.size(); j++) {
          double[] from = Objects.requireNonNull(truth.get(names.get(i)));
          double[] to = Objects.requireNonNull(truth.get(names.get(j)));
          double dx = to[0] - from[0];
          double dy = to[1] - from[1];
          double value = Math.sqrt(dx * dx + dy * dy) + common + draws.next(INDEPENDENT);
          readings.add(
              PlantedSlips.reading(
                  "d%03d".formatted(readings.size() + 1),
                  Target.parse(MeasuredQuantity.DISTANCE, names.get(i) + "-" + names.get(j)),
                  value,
                  0,
                  "set " + set));
        }
      }
    }
    return readings;
  }

  static SlipNetwork network(List<SlipReading> readings) {
    List<PlanPoint> points = new ArrayList<>();
    SLAB.forEach(
        (name, at) -> {
          if (readings.stream().anyMatch(r -> r.target().text().contains(name))) {
            points.add(new PlanPoint(name, at[0], at[1]));
          }
        });
    return SlipNetworks.of(
        new DistanceNetwork(
            "slab.A1",
            "slab.A3",
            points,
            readings.stream()
                .map(
                    r ->
                        new MeasuredDistance(
                            r.target().first().text(),
                            r.target().second().text(),
                            PlantedSlips.observation(r, INDEPENDENT, COMMON)))
                .toList()));
  }

  private static PlantedSlips.Planted slabWith(
      List<SlipReading> readings, SlipKind kind, List<String> ids) {
    return new PlantedSlips.Planted(network(readings), readings, kind, ids);
  }

  static PlantedSlips.Planted cleanSlab(long seed) {
    return slabWith(distances(new NormalDraws(seed), 1), SlipKind.SIZE_UNKNOWN, List.of());
  }

  static PlantedSlips.Planted exchangedDistances(long seed, SplittableRandom random) {
    List<SlipReading> clean = distances(new NormalDraws(seed), 1);
    List<SlipReading> slipped = PlantedSlips.exchange(clean, random);
    return slabWith(slipped, SlipKind.EXCHANGED, PlantedSlips.changed(clean, slipped));
  }

  static PlantedSlips.Planted oneDistance(
      long seed,
      SplittableRandom random,
      SlipKind kind,
      BiFunction<SlipReading, SplittableRandom, SlipReading> slip) {
    List<SlipReading> readings = distances(new NormalDraws(seed), 1);
    int at = random.nextInt(readings.size());
    while (DigitSwaps.of(DigitSwaps.written(readings.get(at))).isEmpty()) {
      at = (at + 1) % readings.size(); // such as 9.000, in which nothing can be transposed
    }
    readings.set(at, slip.apply(readings.get(at), random));
    return slabWith(readings, kind, List.of(readings.get(at).id()));
  }

  static PlantedSlips.Planted miscounted(
      long seed, SplittableRandom random, double metres, SlipKind kind) {
    return oneDistance(
        seed,
        random,
        kind,
        (r, d) -> PlantedSlips.with(r, r.value() + (d.nextBoolean() ? metres : -metres)));
  }

  static PlantedSlips.Planted transposed(long seed, SplittableRandom random) {
    return oneDistance(
        seed,
        random,
        SlipKind.TRANSPOSED_DIGITS,
        (reading, draw) -> {
          List<WrittenValue> swaps = DigitSwaps.of(DigitSwaps.written(reading));
          return PlantedSlips.with(
              reading, DigitSwaps.value(swaps.get(draw.nextInt(swaps.size()))).orElseThrow());
        });
  }

  /** Read in metres, noted in feet: the same number with the wrong unit. */
  static PlantedSlips.Planted feet(long seed, SplittableRandom random) {
    return oneDistance(
        seed,
        random,
        SlipKind.UNIT_MISTAKEN,
        (reading, draw) -> {
          WrittenValue feet = new WrittenValue(reading.written().orElseThrow().value(), "ft");
          return new SlipReading(
              reading.id(),
              reading.target(),
              DigitSwaps.value(feet).orElseThrow(),
              0,
              reading.set(),
              Optional.of(feet),
              1);
        });
  }

  static PlantedSlips.Planted edgeOfOne(long seed, SplittableRandom random) {
    return oneDistance(
        seed,
        random,
        SlipKind.METER_EDGE,
        (r, draw) -> PlantedSlips.with(r, r.value() - (0.1 + 0.001 * draw.nextInt(40))));
  }

  static PlantedSlips.Planted edgeOfSet(long seed, SplittableRandom random) {
    List<SlipReading> readings = distances(new NormalDraws(seed), 2);
    double edge = 0.1 + 0.001 * random.nextInt(40);
    List<String> ids = new ArrayList<>();
    for (int i = 15; i < 30; i++) {
      readings.set(i, PlantedSlips.with(readings.get(i), readings.get(i).value() - edge));
      ids.add(readings.get(i).id());
    }
    return slabWith(readings, SlipKind.METER_EDGE, ids);
  }

  static PlantedSlips.Planted mirroredDistances(long seed, SplittableRandom random) {
    List<SlipReading> readings = distances(new NormalDraws(seed), 2);
    return slabWith(
        PlantedSlips.mirrored(readings, "set 2"),
        SlipKind.SIDES_EXCHANGED,
        PlantedSlips.changed(readings, PlantedSlips.mirrored(readings, "set 2")));
  }

  /** Two slips of given kinds in different readings. */
  static PlantedSlips.Planted two(
      long seed, SplittableRandom random, SlipKind usual, SlipKind lessUsual) {
    List<SlipReading> readings = distances(new NormalDraws(seed), 1);
    int one = random.nextInt(readings.size());
    int other = (one + 1 + random.nextInt(readings.size() - 1)) % readings.size();
    readings.set(one, slipped(readings.get(one), random, usual));
    readings.set(other, slipped(readings.get(other), random, lessUsual));
    return slabWith(readings, lessUsual, List.of(readings.get(one).id(), readings.get(other).id()));
  }

  private static SlipReading slipped(SlipReading of, SplittableRandom random, SlipKind kind) {
    double amount =
        switch (kind) {
          case WHOLE_UNIT -> 1;
          case TAPE_MARK -> 0.1;
          default -> 0.4 + 0.2 * random.nextDouble();
        };
    return PlantedSlips.with(of, of.value() + (random.nextBoolean() ? amount : -amount));
  }
}
