package datumpeg.analysis.slip;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.WrittenValue;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** All slips to be tried on some readings. What could not have been read is left out. */
final class PossibleSlips {
  private static final double FOOT = Unit.FOOT.toSi(1);

  private static final List<Step> STEPS =
      List.of(
          new Step(1, SlipKind.WHOLE_UNIT, "a whole metre"),
          new Step(2, SlipKind.WHOLE_UNIT, "two whole metres"),
          new Step(FOOT, SlipKind.WHOLE_UNIT, "a whole foot"),
          new Step(0.1, SlipKind.TAPE_MARK, "a mark of 100 mm"),
          new Step(0.01, SlipKind.TAPE_MARK, "a mark of 10 mm"));

  private record Step(double metres, SlipKind kind, String words) {}

  private final SlipOptions options;
  private final List<Slip> slips = new ArrayList<>();

  private PossibleSlips(SlipOptions options) {
    this.options = options;
  }

  static List<Slip> of(List<SlipReading> readings, SlipOptions options) {
    PossibleSlips possible = new PossibleSlips(options);
    readings.forEach(possible::ofOne);
    possible.exchanged(readings);
    Map<String, List<SlipReading>> sets = grouped(readings);
    sets.values().forEach(possible::ofSet);
    return List.copyOf(possible.slips);
  }

  private static Map<String, List<SlipReading>> grouped(List<SlipReading> readings) {
    Map<String, List<SlipReading>> sets = new LinkedHashMap<>();
    readings.forEach(
        reading -> sets.computeIfAbsent(reading.set(), set -> new ArrayList<>()).add(reading));
    return sets;
  }

  private void ofOne(SlipReading reading) {
    slips.add(new Slip.Offset(List.of(reading), SlipKind.SIZE_UNKNOWN));
    if (!reading.isTilt()) {
      counted(reading);
      unitMistaken(reading);
    }
    for (WrittenValue swapped : DigitSwaps.of(DigitSwaps.written(reading))) {
      DigitSwaps.value(swapped)
          .ifPresent(
              value ->
                  add(new Slip.Miswritten(reading, SlipKind.TRANSPOSED_DIGITS, swapped, value)));
    }
    if (reading.target().quantity() != MeasuredQuantity.DISTANCE && reading.value() != 0) {
      turned(reading);
    }
  }

  private void counted(SlipReading reading) {
    for (Step step : STEPS) {
      add(new Slip.Miscounted(reading, step.kind(), step.metres(), step.words()));
      add(new Slip.Miscounted(reading, step.kind(), -step.metres(), step.words()));
    }
    for (double edge : options.edgesMetres()) {
      String words = "the meter's edge of " + reading.shown(edge);
      add(new Slip.Miscounted(reading, SlipKind.METER_EDGE, edge, words));
      add(new Slip.Miscounted(reading, SlipKind.METER_EDGE, -edge, words));
    }
  }

  /** Only as the value was written: a number noted in metres may have been in feet, and back. */
  private void unitMistaken(SlipReading reading) {
    WrittenValue written = DigitSwaps.written(reading);
    String other =
        switch (written.unit()) {
          case "m" -> "ft";
          case "ft" -> "m";
          default -> "";
        };
    if (!other.isEmpty()) {
      WrittenValue meant = new WrittenValue(written.value(), other);
      DigitSwaps.value(meant)
          .ifPresent(
              value -> add(new Slip.Miswritten(reading, SlipKind.UNIT_MISTAKEN, meant, value)));
    }
  }

  private void turned(SlipReading reading) {
    String target = reading.targetWords();
    add(
        new Slip.Turned(
            reading, SlipKind.SIGN, -reading.value(), "the sign of " + target + " mistaken"));
    if (reading.face() != 0) {
      add(
          new Slip.Turned(
              reading,
              SlipKind.FACE,
              -reading.value(),
              target + " noted for face " + reading.face() + ", read on the other"));
    }
    if (reading.target().quantity() == MeasuredQuantity.STAFF) {
      for (double staff : options.staffsMetres()) {
        if (staff > reading.value()) {
          add(
              new Slip.Turned(
                  reading,
                  SlipKind.STAFF_INVERTED,
                  staff - reading.value(),
                  "the staff of "
                      + LengthDisplay.decimal(staff, 1)
                      + " m upside down at "
                      + target));
        }
      }
    }
  }

  /** Single readings of different targets, and all readings of two targets read equally often. */
  private void exchanged(List<SlipReading> readings) {
    for (int i = 0; i < readings.size(); i++) {
      for (int j = i + 1; j < readings.size(); j++) {
        SlipReading one = readings.get(i);
        SlipReading other = readings.get(j);
        boolean alike = one.target().quantity() == other.target().quantity();
        boolean elsewhere = !one.target().equals(other.target()) || one.face() != other.face();
        if (alike && elsewhere && one.value() != other.value()) {
          add(new Slip.Exchanged(List.of(one), List.of(other)));
        }
      }
    }
    List<List<SlipReading>> repeated =
        byTarget(readings).values().stream().filter(of -> of.size() > 1).toList();
    for (int i = 0; i < repeated.size(); i++) {
      for (int j = i + 1; j < repeated.size(); j++) {
        if (fitEachOther(repeated.get(i), repeated.get(j))) {
          add(new Slip.Exchanged(repeated.get(i), repeated.get(j)));
        }
      }
    }
  }

  private static Map<String, List<SlipReading>> byTarget(List<SlipReading> readings) {
    Map<String, List<SlipReading>> targets = new LinkedHashMap<>();
    readings.forEach(
        reading ->
            targets
                .computeIfAbsent(
                    reading.target().quantity() + " " + reading.target().text(),
                    target -> new ArrayList<>())
                .add(reading));
    return targets;
  }

  /** As many readings, of one quantity, on the same faces in the same order. */
  private static boolean fitEachOther(List<SlipReading> one, List<SlipReading> other) {
    if (one.size() != other.size()) {
      return false;
    }
    for (int i = 0; i < one.size(); i++) {
      boolean alike = one.get(i).target().quantity() == other.get(i).target().quantity();
      if (!alike || one.get(i).face() != other.get(i).face()) {
        return false;
      }
    }
    return true;
  }

  private void ofSet(List<SlipReading> set) {
    if (set.size() < 2) {
      return;
    }
    boolean allDistances =
        set.stream().allMatch(r -> r.target().quantity() == MeasuredQuantity.DISTANCE);
    if (allDistances) {
      slips.add(new Slip.Offset(set, SlipKind.METER_EDGE));
    }
    SideSwap.of(set).forEach(this::add);
  }

  private void add(Slip slip) {
    boolean possible =
        slip.readings().stream()
            .filter(reading -> reading.target().quantity() == MeasuredQuantity.DISTANCE)
            .allMatch(r -> slip.instead().getOrDefault(r.id(), r.value()) > 0);
    if (possible) {
      slips.add(slip);
    }
  }
}
