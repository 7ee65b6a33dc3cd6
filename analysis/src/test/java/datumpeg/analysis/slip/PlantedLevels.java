package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.LevelNetwork;
import datumpeg.analysis.adjust.LevelReading;
import datumpeg.analysis.adjust.LevelSetUp;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.adjust.PlanPoint;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.simulate.NormalDraws;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/** Slips planted in the levels of eight points, read from two set-ups. */
final class PlantedLevels {
  private PlantedLevels() {}

  /** Staffs at eight points from two set-ups, which differ by centimetres. */
  static List<SlipReading> levels(NormalDraws draws) {
    List<SlipReading> readings = new ArrayList<>();
    double[] truth = new double[8];
    for (int i = 0; i < truth.length; i++) {
      truth[i] = draws.next(0.03);
    }
    for (int setUp = 1; setUp <= 2; setUp++) {
      double height = 1.4 + 0.1 * setUp;
      for (int i = 0; i < truth.length; i++) {
        String point = (i < 4 ? "seat.A" : "seat.B") + (i % 4 + 1);
        readings.add(
            PlantedSlips.reading(
                "s%02d".formatted(readings.size() + 1),
                Target.parse(MeasuredQuantity.STAFF, point),
                height - truth[i] + draws.next(0.001),
                0,
                "set-up " + setUp));
      }
    }
    return readings;
  }

  static PlantedSlips.Planted levelsWith(
      List<SlipReading> readings, SlipKind kind, List<String> ids) {
    List<PlanPoint> points = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      String point = (i < 4 ? "seat.A" : "seat.B") + (i % 4 + 1);
      points.add(new PlanPoint(point, 6 * (i % 4), i < 4 ? 0 : 9));
    }
    List<LevelSetUp> setUps =
        List.of(new LevelSetUp("set-up 1", 5e-5, 5e-5), new LevelSetUp("set-up 2", 5e-5, 5e-5));
    LevelNetwork network =
        new LevelNetwork(
            points,
            setUps,
            readings.stream()
                .map(
                    r ->
                        new LevelReading(
                            r.set(),
                            r.target().first().text(),
                            Observation.independent(r.id(), -r.value(), 0.0011)))
                .toList());
    return new PlantedSlips.Planted(SlipNetworks.of(network), readings, kind, ids);
  }

  static PlantedSlips.Planted exchangedLevels(long seed, SplittableRandom random) {
    List<SlipReading> clean = levels(new NormalDraws(seed));
    List<SlipReading> first = PlantedSlips.exchange(clean.subList(0, 8), random);
    List<SlipReading> slipped = new ArrayList<>(first);
    slipped.addAll(clean.subList(8, 16));
    return levelsWith(slipped, SlipKind.EXCHANGED, PlantedSlips.changed(clean, slipped));
  }

  static PlantedSlips.Planted oneLevel(
      long seed,
      SplittableRandom random,
      SlipKind kind,
      BiFunction<SlipReading, SplittableRandom, Double> slip) {
    List<SlipReading> readings = levels(new NormalDraws(seed));
    int at = random.nextInt(readings.size());
    readings.set(at, PlantedSlips.with(readings.get(at), slip.apply(readings.get(at), random)));
    return levelsWith(readings, kind, List.of(readings.get(at).id()));
  }

  static PlantedSlips.Planted miscountedLevel(long seed, SplittableRandom random) {
    return oneLevel(
        seed, random, SlipKind.WHOLE_UNIT, (r, d) -> r.value() + (d.nextBoolean() ? 1 : -1));
  }

  static PlantedSlips.Planted signOfStaff(long seed, SplittableRandom random) {
    return oneLevel(seed, random, SlipKind.SIGN, (r, d) -> -r.value());
  }

  static PlantedSlips.Planted staffInverted(long seed, SplittableRandom random) {
    return oneLevel(seed, random, SlipKind.STAFF_INVERTED, (r, d) -> 5 - r.value());
  }

  static PlantedSlips.Planted mirroredLevels(long seed, SplittableRandom random) {
    List<SlipReading> readings = levels(new NormalDraws(seed));
    List<SlipReading> slipped = PlantedSlips.mirrored(readings, "set-up 2");
    return levelsWith(slipped, SlipKind.SIDES_EXCHANGED, PlantedSlips.changed(readings, slipped));
  }
}
