package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.CommonPart;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.WrittenValue;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/**
 * Simulated networks, invented, with one slip of a kind planted where the seed says: what the
 * search is tried on, by the tests with few seeds and by the study with many.
 */
final class PlantedSlips {
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
    all.put("slab: two readings exchanged", PlantedDistances::exchangedDistances);
    all.put(
        "slab: a metre dropped or added",
        (s, r) -> PlantedDistances.miscounted(s, r, 1, SlipKind.WHOLE_UNIT));
    all.put(
        "slab: a foot dropped or added",
        (s, r) -> PlantedDistances.miscounted(s, r, 0.3048, SlipKind.WHOLE_UNIT));
    all.put(
        "slab: 100 mm dropped or added",
        (s, r) -> PlantedDistances.miscounted(s, r, 0.1, SlipKind.TAPE_MARK));
    all.put(
        "slab: 10 mm dropped or added",
        (s, r) -> PlantedDistances.miscounted(s, r, 0.01, SlipKind.TAPE_MARK));
    all.put("slab: digits transposed", PlantedDistances::transposed);
    all.put("slab: metres noted as feet", PlantedDistances::feet);
    all.put("slab: meter's edge, one reading", PlantedDistances::edgeOfOne);
    all.put("slab: meter's edge, one set of two", PlantedDistances::edgeOfSet);
    all.put("slab: A and B exchanged, one set of two", PlantedDistances::mirroredDistances);
    all.put("levels: two readings exchanged", PlantedLevels::exchangedLevels);
    all.put("levels: a metre dropped or added", PlantedLevels::miscountedLevel);
    all.put("levels: sign of a staff", PlantedLevels::signOfStaff);
    all.put("levels: staff upside down", PlantedLevels::staffInverted);
    all.put("levels: A and B exchanged, one of two", PlantedLevels::mirroredLevels);
    all.put("tilts: sign of a lean", PlantedTilts::signOfLean);
    all.put("tilts: face mistaken", PlantedTilts::faceMistaken);
    return all;
  }

  /** Two slips at once, by the name under which their share is told. */
  static Map<String, BiFunction<Long, SplittableRandom, Planted>> pairs() {
    Map<String, BiFunction<Long, SplittableRandom, Planted>> pairs = new LinkedHashMap<>();
    pairs.put(
        "slab: two metres",
        (s, r) -> PlantedDistances.two(s, r, SlipKind.WHOLE_UNIT, SlipKind.WHOLE_UNIT));
    pairs.put(
        "slab: a metre, and 100 mm",
        (s, r) -> PlantedDistances.two(s, r, SlipKind.WHOLE_UNIT, SlipKind.TAPE_MARK));
    pairs.put(
        "slab: a metre, and 400 to 600 mm",
        (s, r) -> PlantedDistances.two(s, r, SlipKind.WHOLE_UNIT, SlipKind.SIZE_UNKNOWN));
    pairs.put(
        "slab: twice 400 to 600 mm",
        (s, r) -> PlantedDistances.two(s, r, SlipKind.SIZE_UNKNOWN, SlipKind.SIZE_UNKNOWN));
    return pairs;
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

  static SlipReading with(SlipReading reading, double value) {
    return reading(reading.id(), reading.target(), value, reading.face(), reading.set());
  }

  static Observation observation(SlipReading reading, double independent, double common) {
    return new Observation(
        reading.id(),
        reading.sign() * reading.value(),
        independent,
        List.of(new CommonPart(reading.set(), reading.sign() * common)));
  }

  /** Of readings that differ by more than 10 mm: less is no slip that matters. */
  static List<SlipReading> exchange(List<SlipReading> readings, SplittableRandom random) {
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

  static List<String> changed(List<SlipReading> before, List<SlipReading> after) {
    List<String> ids = new ArrayList<>();
    for (int i = 0; i < before.size(); i++) {
      if (before.get(i).value() != after.get(i).value()) {
        ids.add(before.get(i).id());
      }
    }
    return ids;
  }

  static List<SlipReading> mirrored(List<SlipReading> readings, String set) {
    List<SlipReading> ofSet = readings.stream().filter(r -> r.set().equals(set)).toList();
    Map<String, Double> values = SideSwap.of(ofSet).get(0).instead();
    return readings.stream().map(r -> with(r, values.getOrDefault(r.id(), r.value()))).toList();
  }
}
