package datumpeg.bridge.toml;

import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.mistake.Place;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * One value of a TOML file. A method that asks for a type adds a mistake and returns empty if the
 * value is of another.
 */
public final class Value {
  private final Object value;
  private final String name;
  private final Place place;
  private final Mistakes mistakes;

  Value(Object value, String name, Place place, Mistakes mistakes) {
    this.value = value;
    this.name = name;
    this.place = place;
    this.mistakes = mistakes;
  }

  /** The key with the tables it stands in, such as {@code building.span}. */
  public String name() {
    return name;
  }

  /** Where its key begins; for an item of a list, where the item begins. */
  public Place place() {
    return place;
  }

  public boolean isText() {
    return value instanceof String;
  }

  public boolean isTable() {
    return value instanceof TomlTable;
  }

  public Optional<String> text() {
    return as(String.class, "a text in quotes");
  }

  public Optional<Boolean> truth() {
    return as(Boolean.class, "true or false");
  }

  public Optional<LocalDate> date() {
    return as(LocalDate.class, "a date without quotes, such as 2026-03-02");
  }

  /** A number, whole or not. */
  public Optional<Double> number() {
    return as(Number.class, "a number without quotes")
        .map(Number::doubleValue)
        .filter(
            number -> {
              if (!Double.isFinite(number)) {
                mistake("'" + name + "' is " + number + "; expected a finite number.");
              }
              return Double.isFinite(number);
            });
  }

  public Optional<Long> wholeNumber() {
    return as(Long.class, "a whole number");
  }

  public Optional<Table> table() {
    return as(TomlTable.class, "a table").map(table -> new Table(table, name, place, mistakes));
  }

  public Optional<List<Value>> list() {
    return as(TomlArray.class, "a list in square brackets").map(this::items);
  }

  public void mistake(String sentence) {
    mistakes.add(place, sentence);
  }

  /** What it is, for messages: {@code the number 9}. */
  public String describe() {
    if (value instanceof String) {
      return "the text \"" + value + "\"";
    }
    if (value instanceof Number) {
      return "the number " + value;
    }
    if (value instanceof TomlTable) {
      return "a table";
    }
    return value instanceof TomlArray ? "a list" : value.toString();
  }

  private List<Value> items(TomlArray array) {
    List<Value> items = new ArrayList<>();
    for (int i = 0; i < array.size(); i++) {
      TomlPosition position = array.inputPositionOf(i);
      items.add(
          new Value(
              array.get(i),
              name + "[" + (i + 1) + "]",
              new Place(place.file(), position.line(), position.column()),
              mistakes));
    }
    return items;
  }

  private <T> Optional<T> as(Class<T> type, String expected) {
    if (type.isInstance(value)) {
      return Optional.of(type.cast(value));
    }
    mistake("'" + name + "' is " + describe() + "; expected " + expected + ".");
    return Optional.empty();
  }
}
