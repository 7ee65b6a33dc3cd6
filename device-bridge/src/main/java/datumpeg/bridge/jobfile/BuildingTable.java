package datumpeg.bridge.jobfile;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.building.Roof;
import datumpeg.bridge.toml.Bound;
import datumpeg.bridge.toml.Quantities;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** {@code [building]}: the building as the drawing gives it. */
final class BuildingTable {
  private static final double SUM_TOLERANCE_METRES = 1e-6;

  private BuildingTable() {}

  /** The building; empty if this table or that of the sections has mistakes. */
  static Optional<Building> read(Table table, Optional<SectionsTable> sections) {
    Fields fields = new Fields(table);
    double span = fields.length("span", Bound.POSITIVE);
    double length = fields.length("length", Bound.POSITIVE);
    double eaveHeight = fields.length("eave_height", Bound.POSITIVE);
    Optional<Roof> roof = roof(fields);
    double pitch = pitch(fields);
    double endLineOffset = fields.length("end_line_offset", Bound.NOT_NEGATIVE, 0);
    List<Double> bays = bays(fields, length - 2 * endLineOffset);
    fields.end();
    if (!fields.sound() || sections.isEmpty() || roof.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new Building(
              span,
              length,
              eaveHeight,
              sections.get().columnHeightMetres().orElse(eaveHeight),
              roof.get(),
              pitch,
              endLineOffset,
              bays,
              sections.get().sections()));
    } catch (IllegalArgumentException e) {
      table.mistake(String.valueOf(e.getMessage()));
      return Optional.empty();
    }
  }

  private static Optional<Roof> roof(Fields fields) {
    return fields
        .word(fields.table().require("roof"), List.of("gable", "mono"))
        .map(word -> word.equals("gable") ? Roof.GABLE : Roof.MONO);
  }

  private static double pitch(Fields fields) {
    double pitch = fields.angle("pitch", Bound.NOT_NEGATIVE);
    if (pitch >= StrictMath.PI / 2) {
      fields
          .table()
          .find("pitch")
          .ifPresent(value -> value.mistake("'building.pitch' is 90 deg or more; expected less."));
    }
    return pitch;
  }

  /** NaN between the end lines means that it is not known, and the sum is not looked at. */
  private static List<Double> bays(Fields fields, double betweenMetres) {
    Optional<Value> value = fields.table().require("bays");
    if (value.isEmpty()) {
      return List.of();
    }
    int before = fields.table().mistakes().count();
    List<Double> bays = Quantities.lengths(value.get(), Bound.POSITIVE);
    boolean sound = fields.table().mistakes().count() == before;
    if (sound && bays.isEmpty()) {
      value.get().mistake("'building.bays' is empty; expected at least one bay.");
    } else if (sound) {
      checkSum(value.get(), bays, betweenMetres);
    }
    return bays;
  }

  private static void checkSum(Value value, List<Double> bays, double betweenMetres) {
    double sum = bays.stream().mapToDouble(Double::doubleValue).sum();
    double over = sum - betweenMetres;
    if (Math.abs(over) > SUM_TOLERANCE_METRES) {
      value.mistake(
          "The bays sum to "
              + Millimetres.text(sum)
              + " ("
              + bays.stream().map(Millimetres::text).collect(Collectors.joining(" + "))
              + "), but length − 2 · end_line_offset is "
              + Millimetres.text(betweenMetres)
              + ": the bays are "
              + Millimetres.text(Math.abs(over))
              + (over > 0 ? " too long." : " too short."));
    }
  }
}
