package datumpeg.bridge.jobfile;

import datumpeg.analysis.detail.FlatnessPlan;
import datumpeg.bridge.toml.Bound;
import datumpeg.bridge.toml.Quantities;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** {@code [flatness]}: how the slab's flatness is read. */
final class FlatnessTable {
  private static final double STEP_TOLERANCE_METRES = 1e-6;

  private FlatnessTable() {}

  static Optional<FlatnessPlan> read(Table table) {
    Fields fields = new Fields(table);
    double straightedge =
        fields.length("straightedge", Bound.POSITIVE, FlatnessPlan.USUAL_STRAIGHTEDGE_METRES);
    OptionalDouble spacing = fields.optionalLength("spacing", Bound.POSITIVE);
    double step = fields.length("step", Bound.POSITIVE, FlatnessPlan.METRIC_STEP_METRES);
    checkStep(table, step);
    Map<String, FlatnessPlan.Line> lines =
        table.findTable("lines").map(given -> lines(given, step)).orElse(Map.of());
    OptionalDouble flatness = least(table, "least_ff");
    OptionalDouble levelness = least(table, "least_fl");
    fields.end();
    return fields.sound()
        ? Optional.of(new FlatnessPlan(straightedge, spacing, step, lines, flatness, levelness))
        : Optional.empty();
  }

  private static void checkStep(Table table, double step) {
    boolean known =
        Math.abs(step - FlatnessPlan.METRIC_STEP_METRES) < STEP_TOLERANCE_METRES
            || Math.abs(step - FlatnessPlan.FOOT_STEP_METRES) < STEP_TOLERANCE_METRES;
    if (step > 0 && !known) {
      table
          .find("step")
          .ifPresent(
              value ->
                  value.mistake(
                      "'"
                          + value.name()
                          + "' is "
                          + Millimetres.text(step)
                          + "; expected 300 mm or 12 in, for which F-numbers are defined."));
    }
  }

  private static OptionalDouble least(Table table, String key) {
    Optional<Value> value = table.find(key);
    Optional<Double> number = value.flatMap(Value::number);
    if (value.isPresent() && number.isPresent() && !(number.get() > 0)) {
      value.get().mistake("'" + value.get().name() + "' is not more than 0.");
    }
    return number.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }

  private static Map<String, FlatnessPlan.Line> lines(Table table, double step) {
    Map<String, FlatnessPlan.Line> lines = new LinkedHashMap<>();
    for (String name : table.keys()) {
      Optional<Value> value = table.find(name);
      if (!name.matches("[A-Za-z0-9_]{1,20}")) {
        value.ifPresent(
            given ->
                given.mistake(
                    "'" + name + "' is not a name for a line; expected letters and digits."));
      }
      value.flatMap(given -> line(given, step)).ifPresent(line -> lines.put(name, line));
    }
    return lines;
  }

  /** Two places, each x along and y across. */
  private static Optional<FlatnessPlan.Line> line(Value value, double step) {
    int before = value.list().map(List::size).orElse(-1);
    if (before != 2) {
      if (before >= 0) {
        value.mistake("'" + value.name() + "' has " + before + " places; expected two.");
      }
      return Optional.empty();
    }
    List<Double> numbers = new ArrayList<>();
    for (Value place : value.list().orElse(List.of())) {
      numbers.addAll(Quantities.lengths(place, Bound.ANY));
    }
    if (numbers.size() != 4) {
      value.mistake("'" + value.name() + "' needs two places of two lengths each, x and y.");
      return Optional.empty();
    }
    FlatnessPlan.Line line =
        new FlatnessPlan.Line(numbers.get(0), numbers.get(1), numbers.get(2), numbers.get(3));
    if (!(line.lengthMetres() >= step)) {
      value.mistake(
          "'"
              + value.name()
              + "' is "
              + Millimetres.text(line.lengthMetres())
              + " long; expected at least one step.");
      return Optional.empty();
    }
    return Optional.of(line);
  }
}
