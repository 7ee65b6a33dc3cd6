package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.CommonPart;
import datumpeg.analysis.adjust.DistanceNetwork;
import datumpeg.analysis.adjust.LevelNetwork;
import datumpeg.analysis.adjust.LevelReading;
import datumpeg.analysis.adjust.LevelSetUp;
import datumpeg.analysis.adjust.MeasuredDistance;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.adjust.PlanPoint;
import datumpeg.analysis.adjust.TiltFace;
import datumpeg.analysis.adjust.TiltReading;
import datumpeg.analysis.adjust.TiltSession;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.WrittenValue;
import datumpeg.analysis.simulate.NormalDraws;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/**
 * Simulated networks, invented, with one slip of a kind planted where the seed says: what the
 * search is tried on, by the tests with few seeds and by the study with many.
 */
final class PlantedSlips {
  static final double INDEPENDENT = 0.0015;
  static final double COMMON = 0.001;
  private static final double TILT_INDEPENDENT = StrictMath.toRadians(0.02);
  private static final double TILT_COMMON = StrictMath.toRadians(0.1);
  private static final Map<String, double[]> SLAB = slab();

  /** A network, its readings, and ids of those in which the slip was planted: none if clean. */
  record Planted(SlipNetwork network, List<SlipReading> readings, SlipKind kind, List<String> ids) {
    SlipFindings searched() {
      return SlipSearch.search(network, readings, SlipOptions.USUAL);
    }
  }

  private PlantedSlips() {}

  /** What is planted, by the name under which its share is told. */
  static Map<String, BiFunction<Long, SplittableRandom, Planted>> all() {
    Map<String, BiFunction<Long, SplittableRandom, Planted>> all = new LinkedHashMap<>();
    all.put("slab: two readings exchanged", PlantedSlips::exchangedDistances);
    all.put("slab: a metre dropped or added", (s, r) -> miscounted(s, r, 1, SlipKind.WHOLE_UNIT));
    all.put(
        "slab: a foot dropped or added", (s, r) -> miscounted(s, r, 0.3048, SlipKind.WHOLE_UNIT));
    all.put("slab: 100 mm dropped or added", (s, r) -> miscounted(s, r, 0.1, SlipKind.TAPE_MARK));
    all.put("slab: 10 mm dropped or added", (s, r) -> miscounted(s, r, 0.01, SlipKind.TAPE_MARK));
    all.put("slab: digits transposed", PlantedSlips::transposed);
    all.put("slab: metres noted as feet", PlantedSlips::feet);
    all.put("slab: meter's edge, one reading", PlantedSlips::edgeOfOne);
    all.put("slab: meter's edge, one set of two", PlantedSlips::edgeOfSet);
    all.put("slab: A and B exchanged, one set of two", PlantedSlips::mirroredDistances);
    all.put("levels: two readings exchanged", PlantedSlips::exchangedLevels);
    all.put("levels: a metre dropped or added", PlantedSlips::miscountedLevel);
    all.put("levels: sign of a staff", PlantedSlips::signOfStaff);
    all.put("levels: staff upside down", PlantedSlips::staffInverted);
    all.put("levels: A and B exchanged, one of two", PlantedSlips::mirroredLevels);
    all.put("tilts: sign of a lean", PlantedSlips::signOfLean);
    all.put("tilts: face mistaken", PlantedSlips::faceMistaken);
    return all;
  }

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
              reading(
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

  /** Rounded to the millimetre, or for a tilt to 0.01 degrees, and written so. */
  static SlipReading reading(String id, Target target, double value, int face, String set) {
    boolean tilt = target.quantity() == MeasuredQuantity.TILT;
    String text =
        tilt
            ? String.format(Locale.ROOT, "%.2f", StrictMath.toDegrees(value))
            : String.format(Locale.ROOT, "%.3f", value);
    WrittenValue written = new WrittenValue(text, tilt ? "deg" : "m");
    return new SlipReading(
        id,
        target,
        DigitSwaps.value(written).orElseThrow(),
        face,
        set,
        Optional.of(written),
        target.quantity() == MeasuredQuantity.STAFF ? -1 : 1);
  }

  private static SlipReading with(SlipReading reading, double value) {
    return reading(reading.id(), reading.target(), value, reading.face(), reading.set());
  }

  static SlipNetwork network(List<SlipReading> readings) {
    List<PlanPoint> points = new ArrayList<>();
    SLAB.forEach((name, at) -> points.add(new PlanPoint(name, at[0], at[1])));
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
                            observation(r, INDEPENDENT, COMMON)))
                .toList()));
  }

  private static Observation observation(SlipReading reading, double independent, double common) {
    return new Observation(
        reading.id(),
        reading.sign() * reading.value(),
        independent,
        List.of(new CommonPart(reading.set(), reading.sign() * common)));
  }

  private static Planted slabWith(List<SlipReading> readings, SlipKind kind, List<String> ids) {
    return new Planted(network(readings), readings, kind, ids);
  }

  static Planted cleanSlab(long seed) {
    return slabWith(distances(new NormalDraws(seed), 1), SlipKind.SIZE_UNKNOWN, List.of());
  }

  /** Of readings that differ by more than 10 mm: less is no slip that matters. */
  private static List<SlipReading> exchange(List<SlipReading> readings, SplittableRandom random) {
    List<SlipReading> changed = new ArrayList<>(readings);
    int one;
    int other;
    do {
      one = random.nextInt(readings.size());
      other = random.nextInt(readings.size());
    } while (Math.abs(readings.get(one).value() - readings.get(other).value()) < 0.01);
    changed.set(one, with(readings.get(one), readings.get(other).value()));
    changed.set(other, with(readings.get(other), readings.get(one).value()));
    return changed;
  }

  private static List<String> changed(List<SlipReading> before, List<SlipReading> after) {
    List<String> ids = new ArrayList<>();
    for (int i = 0; i < before.size(); i++) {
      if (before.get(i).value() != after.get(i).value()) {
        ids.add(before.get(i).id());
      }
    }
    return ids;
  }

  private static Planted exchangedDistances(long seed, SplittableRandom random) {
    List<SlipReading> clean = distances(new NormalDraws(seed), 1);
    List<SlipReading> slipped = exchange(clean, random);
    return slabWith(slipped, SlipKind.EXCHANGED, changed(clean, slipped));
  }

  private static Planted oneDistance(
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

  private static Planted miscounted(
      long seed, SplittableRandom random, double metres, SlipKind kind) {
    return oneDistance(
        seed, random, kind, (r, d) -> with(r, r.value() + (d.nextBoolean() ? metres : -metres)));
  }

  private static Planted transposed(long seed, SplittableRandom random) {
    return oneDistance(
        seed,
        random,
        SlipKind.TRANSPOSED_DIGITS,
        (reading, draw) -> {
          List<WrittenValue> swaps = DigitSwaps.of(DigitSwaps.written(reading));
          return with(
              reading, DigitSwaps.value(swaps.get(draw.nextInt(swaps.size()))).orElseThrow());
        });
  }

  /** Read in metres, noted in feet: the same number with the wrong unit. */
  private static Planted feet(long seed, SplittableRandom random) {
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

  private static Planted edgeOfOne(long seed, SplittableRandom random) {
    return oneDistance(
        seed,
        random,
        SlipKind.METER_EDGE,
        (r, draw) -> with(r, r.value() - (0.1 + 0.001 * draw.nextInt(40))));
  }

  private static Planted edgeOfSet(long seed, SplittableRandom random) {
    List<SlipReading> readings = distances(new NormalDraws(seed), 2);
    double edge = 0.1 + 0.001 * random.nextInt(40);
    List<String> ids = new ArrayList<>();
    for (int i = 15; i < 30; i++) {
      readings.set(i, with(readings.get(i), readings.get(i).value() - edge));
      ids.add(readings.get(i).id());
    }
    return slabWith(readings, SlipKind.METER_EDGE, ids);
  }

  private static Planted mirroredDistances(long seed, SplittableRandom random) {
    List<SlipReading> readings = distances(new NormalDraws(seed), 2);
    return slabWith(
        mirrored(readings, "set 2"),
        SlipKind.SIDES_EXCHANGED,
        changed(readings, mirrored(readings, "set 2")));
  }

  private static List<SlipReading> mirrored(List<SlipReading> readings, String set) {
    List<SlipReading> ofSet = readings.stream().filter(r -> r.set().equals(set)).toList();
    Map<String, Double> values = SideSwap.of(ofSet).get(0).instead();
    return readings.stream().map(r -> with(r, values.getOrDefault(r.id(), r.value()))).toList();
  }

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
            reading(
                "s%02d".formatted(readings.size() + 1),
                Target.parse(MeasuredQuantity.STAFF, point),
                height - truth[i] + draws.next(0.001),
                0,
                "set-up " + setUp));
      }
    }
    return readings;
  }

  static Planted levelsWith(List<SlipReading> readings, SlipKind kind, List<String> ids) {
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
    return new Planted(SlipNetworks.of(network), readings, kind, ids);
  }

  private static Planted exchangedLevels(long seed, SplittableRandom random) {
    List<SlipReading> clean = levels(new NormalDraws(seed));
    List<SlipReading> first = exchange(clean.subList(0, 8), random);
    List<SlipReading> slipped = new ArrayList<>(first);
    slipped.addAll(clean.subList(8, 16));
    return levelsWith(slipped, SlipKind.EXCHANGED, changed(clean, slipped));
  }

  private static Planted oneLevel(
      long seed,
      SplittableRandom random,
      SlipKind kind,
      BiFunction<SlipReading, SplittableRandom, Double> slip) {
    List<SlipReading> readings = levels(new NormalDraws(seed));
    int at = random.nextInt(readings.size());
    readings.set(at, with(readings.get(at), slip.apply(readings.get(at), random)));
    return levelsWith(readings, kind, List.of(readings.get(at).id()));
  }

  private static Planted miscountedLevel(long seed, SplittableRandom random) {
    return oneLevel(
        seed, random, SlipKind.WHOLE_UNIT, (r, d) -> r.value() + (d.nextBoolean() ? 1 : -1));
  }

  private static Planted signOfStaff(long seed, SplittableRandom random) {
    return oneLevel(seed, random, SlipKind.SIGN, (r, d) -> -r.value());
  }

  private static Planted staffInverted(long seed, SplittableRandom random) {
    return oneLevel(seed, random, SlipKind.STAFF_INVERTED, (r, d) -> 5 - r.value());
  }

  private static Planted mirroredLevels(long seed, SplittableRandom random) {
    List<SlipReading> readings = levels(new NormalDraws(seed));
    List<SlipReading> slipped = mirrored(readings, "set-up 2");
    return levelsWith(slipped, SlipKind.SIDES_EXCHANGED, changed(readings, slipped));
  }

  /** Six columns on two faces each with one meter; leans of some tenths of a degree. */
  static List<SlipReading> tilts(NormalDraws draws) {
    List<SlipReading> readings = new ArrayList<>();
    double zero = draws.next(TILT_COMMON);
    for (int i = 0; i < 6; i++) {
      double lean = StrictMath.toRadians(0.3) * (i % 2 == 0 ? 1 : -1) + draws.next(0.001);
      String column = "column." + (i < 3 ? "A" : "B") + (i % 3 + 1) + "/across";
      for (int face = 1; face <= 2; face++) {
        double value = (face == 1 ? lean : -lean) + zero + draws.next(TILT_INDEPENDENT);
        readings.add(
            reading(
                "t%02d".formatted(readings.size() + 1),
                Target.parse(MeasuredQuantity.TILT, column),
                value,
                face,
                "tilt"));
      }
    }
    return readings;
  }

  private static Planted oneTilt(long seed, SplittableRandom random, SlipKind kind) {
    NormalDraws draws = new NormalDraws(seed);
    List<SlipReading> readings = tilts(draws);
    int at = random.nextInt(readings.size());
    SlipReading before = readings.get(at);
    double zero = kind == SlipKind.FACE ? meanOfFaces(readings, at) : 0;
    readings.set(at, with(before, 2 * zero - before.value()));
    TiltSession session =
        new TiltSession(
            readings.stream()
                .map(
                    r ->
                        new TiltReading(
                            r.target().text(),
                            r.face() == 1 ? TiltFace.ONE : TiltFace.TWO,
                            observation(r, TILT_INDEPENDENT, TILT_COMMON)))
                .toList());
    return new Planted(SlipNetworks.of(session), readings, kind, List.of(readings.get(at).id()));
  }

  private static double meanOfFaces(List<SlipReading> readings, int at) {
    int partner = at % 2 == 0 ? at + 1 : at - 1;
    return (readings.get(at).value() + readings.get(partner).value()) / 2;
  }

  private static Planted signOfLean(long seed, SplittableRandom random) {
    return oneTilt(seed, random, SlipKind.SIGN);
  }

  private static Planted faceMistaken(long seed, SplittableRandom random) {
    return oneTilt(seed, random, SlipKind.FACE);
  }
}
