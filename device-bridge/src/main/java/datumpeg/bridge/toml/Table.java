package datumpeg.bridge.toml;

import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.mistake.Nearest;
import datumpeg.bridge.mistake.Place;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/** One table of a TOML file. One thread. */
public final class Table {
  private final TomlTable table;
  private final String path;
  private final Place place;
  private final Mistakes mistakes;
  private final Set<String> known = new LinkedHashSet<>();

  Table(TomlTable table, String path, Place place, Mistakes mistakes) {
    this.table = table;
    this.path = path;
    this.place = place;
    this.mistakes = mistakes;
  }

  /** Where the table begins. */
  public Place place() {
    return place;
  }

  /** All its keys, in the order of the file. */
  public List<String> keys() {
    return List.copyOf(table.keySet());
  }

  /** The value of a key that need not be there; from now on the key is a known one. */
  public Optional<Value> find(String key) {
    known.add(key);
    Object value = table.get(List.of(key));
    return value == null
        ? Optional.empty()
        : Optional.of(new Value(value, nameOf(key), placeOf(key), mistakes));
  }

  /** The value of a key that must be there; its absence is a mistake. */
  public Optional<Value> require(String key) {
    Optional<Value> value = find(key);
    if (value.isEmpty()) {
      mistakes.add(place, "The key '" + nameOf(key) + "' is missing.");
    }
    return value;
  }

  /** The table under a key, if it is there and is a table. */
  public Optional<Table> findTable(String key) {
    return find(key).flatMap(Value::table);
  }

  /** Adds a mistake for each key that nobody asked for. */
  public void refuseOthers() {
    for (String key : table.keySet()) {
      if (!known.contains(key)) {
        String kind = table.isTable(List.of(key)) ? "table" : "key";
        mistakes.add(
            placeOf(key),
            "The " + kind + " '" + nameOf(key) + "' is unknown; " + Nearest.hint(key, known) + ".");
      }
    }
  }

  public void mistake(String sentence) {
    mistakes.add(place, sentence);
  }

  /** What has been found wrong in the whole file so far. */
  public Mistakes mistakes() {
    return mistakes;
  }

  private Place placeOf(String key) {
    TomlPosition position = table.inputPositionOf(List.of(key));
    return position == null ? place : new Place(place.file(), position.line(), position.column());
  }

  private String nameOf(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }
}
