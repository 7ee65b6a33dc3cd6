package datumpeg.bridge.jobfile;

import datumpeg.analysis.job.SteelTemperatures;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * {@code [temperature]}: how warm the steel may have been where nobody read it; and {@code
 * steel_temperature} of a stage, where somebody did.
 */
final class TemperatureTable {
  /** The key of a stage's table. */
  static final String OF_STAGE = "steel_temperature";

  private static final Pattern TEXT =
      Pattern.compile("([-+]?[0-9]{1,3}(?:\\.[0-9]{1,3})?)\\s*(degC|°C|degF|°F|K)");

  private TemperatureTable() {}

  /** The temperatures without mistakes; the usual ones with mistakes or without tables. */
  static SteelTemperatures read(Table document) {
    SteelTemperatures usual = SteelTemperatures.UNKNOWN;
    Optional<Table> table = document.findTable("temperature");
    Optional<Value> range = table.flatMap(given -> given.find("steel_range"));
    List<Value> ends = range.flatMap(Value::list).orElse(List.of());
    if (range.isPresent() && ends.size() != 2) {
      range
          .get()
          .mistake(
              "'temperature.steel_range' has "
                  + ends.size()
                  + " temperatures; expected the lowest and the highest, such as [\"5 degC\", \"35"
                  + " degC\"].");
    }
    double lowest = ends.size() == 2 ? celsius(ends.get(0)) : usual.lowestCelsius();
    double highest = ends.size() == 2 ? celsius(ends.get(1)) : usual.highestCelsius();
    double within =
        table
            .flatMap(given -> given.find("read_within"))
            .map(TemperatureTable::kelvin)
            .orElse(usual.withinKelvin());
    table.ifPresent(Table::refuseOthers);
    Map<String, Double> read = ofStages(document.findTable("stages"));
    try {
      return new SteelTemperatures(lowest, highest, within, read);
    } catch (IllegalArgumentException e) {
      table.orElse(document).mistake(String.valueOf(e.getMessage()));
      return usual;
    }
  }

  private static Map<String, Double> ofStages(Optional<Table> stages) {
    Map<String, Double> read = new LinkedHashMap<>();
    for (String id : stages.map(Table::keys).orElse(List.of())) {
      stages
          .flatMap(given -> given.findTable(id))
          .flatMap(stage -> stage.find(OF_STAGE))
          .ifPresent(value -> read.put(id, celsius(value)));
    }
    return read;
  }

  /** A temperature; 20 °C with a mistake added. */
  private static double celsius(Value value) {
    Optional<Matcher> match = match(value, "a temperature such as \"12 degC\" or \"54 degF\"");
    if (match.isEmpty()) {
      return SteelTemperatures.REFERENCE_CELSIUS;
    }
    double number = Double.parseDouble(match.get().group(1));
    return switch (match.get().group(2)) {
      case "degF", "°F" -> (number - 32) / 1.8;
      case "K" -> number - 273.15;
      default -> number;
    };
  }

  /** A difference of temperatures; 0 with a mistake added. */
  private static double kelvin(Value value) {
    Optional<Matcher> match = match(value, "a difference of temperatures such as \"3 K\"");
    if (match.isEmpty()) {
      return 0;
    }
    double number = Double.parseDouble(match.get().group(1));
    return match.get().group(2).endsWith("F") ? number / 1.8 : number;
  }

  private static Optional<Matcher> match(Value value, String expected) {
    Optional<String> text = value.text();
    Optional<Matcher> match = text.map(String::strip).map(TEXT::matcher).filter(Matcher::matches);
    if (text.isPresent() && value.isText() && match.isEmpty()) {
      value.mistake("'" + value.name() + "' is \"" + text.get() + "\"; expected " + expected + ".");
    }
    return match;
  }
}
