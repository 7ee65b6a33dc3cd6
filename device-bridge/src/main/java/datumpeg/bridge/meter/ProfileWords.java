package datumpeg.bridge.meter;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.mistake.Nearest;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Reads the single values of a profile's tables: one of a few words, a number in its bounds. */
final class ProfileWords {
  static final Map<String, Unit> UNITS =
      byWord(
          Arrays.stream(Unit.values()).filter(unit -> unit != Unit.FOOT_AND_INCH).toList(),
          Unit::symbol);

  private ProfileWords() {}

  static int number(Table table, String key, int otherwise, int least, int most) {
    Optional<Value> value = table.find(key);
    Optional<Long> number = value.flatMap(Value::wholeNumber);
    if (number.isPresent() && (number.get() < least || number.get() > most)) {
      value
          .get()
          .mistake(
              "'%s' is %d; expected %d to %d."
                  .formatted(value.get().name(), number.get(), least, most));
      return otherwise;
    }
    return number.map(Long::intValue).orElse(otherwise);
  }

  static int requiredNumber(Table table, String key, int least, int most) {
    table.require(key);
    return number(table, key, least, least, most);
  }

  static Unit unit(Table table) {
    table.require("unit");
    return choice(table, "unit", UNITS);
  }

  static List<String> texts(Table table, String key) {
    return table.find(key).flatMap(Value::list).orElse(List.of()).stream()
        .flatMap(value -> value.text().stream())
        .toList();
  }

  /**
   * What a word stands for; of an absent or unknown one the first, with a mistake for the latter.
   */
  static <T> T choice(Table table, String key, Map<String, T> choices) {
    T first = choices.values().iterator().next();
    Optional<Value> value = table.find(key);
    Optional<String> text = value.flatMap(Value::text);
    if (value.isEmpty() || text.isEmpty()) {
      return first;
    }
    @Nullable T chosen = choices.get(text.get());
    if (chosen == null) {
      String hint = Nearest.hint(text.get(), choices.keySet());
      value.get().mistake("'%s' is \"%s\"; %s.".formatted(value.get().name(), text.get(), hint));
      return first;
    }
    return chosen;
  }

  /** What is made of a table; null, and a mistake added, if its values do not go together. */
  static <T> @Nullable T made(Table table, Optional<Value> blamed, Supplier<T> maker) {
    table.refuseOthers();
    if (!table.mistakes().isEmpty()) {
      return null;
    }
    try {
      return maker.get();
    } catch (IllegalArgumentException e) {
      String sentence = e.getMessage() + ".";
      blamed.ifPresentOrElse(
          value -> value.mistake("'" + value.name() + "': " + sentence),
          () -> table.mistake("In this table " + sentence));
      return null;
    }
  }

  static String hyphenated(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** In the order of the values: the first is what an absent key means. */
  static <T> Map<String, T> byWord(List<T> values, Function<T, String> word) {
    Map<String, T> choices = new LinkedHashMap<>();
    values.forEach(value -> choices.put(word.apply(value), value));
    return Collections.unmodifiableMap(choices);
  }
}
