package datumpeg.bridge.jobfile;

import datumpeg.bridge.mistake.Nearest;
import datumpeg.bridge.toml.Bound;
import datumpeg.bridge.toml.Quantities;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;

/**
 * Reads the keys of one table. A key that is missing or wrong adds a mistake and yields NaN or an
 * empty text; whoever builds something of the values asks {@link #sound} first.
 */
final class Fields {
  private final Table table;
  private final int mistakesBefore;

  Fields(Table table) {
    this.table = table;
    this.mistakesBefore = table.mistakes().count();
  }

  Table table() {
    return table;
  }

  /** Whether nothing was found wrong since this reading began. */
  boolean sound() {
    return table.mistakes().count() == mistakesBefore;
  }

  /** All known keys were asked for: the others are mistakes. */
  void end() {
    table.refuseOthers();
  }

  /** A text that must be there and say something. */
  String text(String key) {
    Optional<Value> value = table.require(key);
    String text = value.flatMap(Value::text).orElse("");
    if (value.isPresent() && value.get().isText() && text.isBlank()) {
      value.get().mistake("'" + value.get().name() + "' is blank; expected a text.");
    }
    return text;
  }

  String text(String key, String otherwise) {
    return table.find(key).map(value -> value.text().orElse("")).orElse(otherwise);
  }

  /** One of a few words; empty if the key is absent or, with a mistake added, another word. */
  Optional<String> word(Optional<Value> value, List<String> words) {
    Optional<String> text = value.flatMap(Value::text);
    if (value.isPresent() && text.isPresent() && !words.contains(text.get())) {
      value
          .get()
          .mistake(
              "'"
                  + value.get().name()
                  + "' is \""
                  + text.get()
                  + "\"; expected one of "
                  + String.join(", ", words)
                  + Nearest.of(text.get(), words)
                      .map(nearest -> ", the nearest is '" + nearest + "'")
                      .orElse("")
                  + ".");
      return Optional.empty();
    }
    return text;
  }

  double length(String key, Bound bound) {
    return required(key, bound, Quantities::length);
  }

  double length(String key, Bound bound, double otherwise) {
    Optional<Value> value = table.find(key);
    return value.isPresent() ? Quantities.length(value.get(), bound).orElse(Double.NaN) : otherwise;
  }

  OptionalDouble optionalLength(String key, Bound bound) {
    Optional<Value> value = table.find(key);
    return value.isPresent() ? Quantities.length(value.get(), bound) : OptionalDouble.empty();
  }

  double angle(String key, Bound bound) {
    return required(key, bound, Quantities::angle);
  }

  OptionalDouble optionalAngle(String key, Bound bound) {
    Optional<Value> value = table.find(key);
    return value.isPresent() ? Quantities.angle(value.get(), bound) : OptionalDouble.empty();
  }

  private double required(
      String key, Bound bound, BiFunction<Value, Bound, OptionalDouble> reader) {
    Optional<Value> value = table.require(key);
    return value.isPresent() ? reader.apply(value.get(), bound).orElse(Double.NaN) : Double.NaN;
  }
}
