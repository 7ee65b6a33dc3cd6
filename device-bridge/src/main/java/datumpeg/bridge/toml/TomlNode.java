package datumpeg.bridge.toml;

import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What stands in a TOML file, as values that can be changed into others and written. Immutable. */
public sealed interface TomlNode {

  /** A text. */
  record Text(String text) implements TomlNode {}

  /** A whole number. */
  record Whole(long number) implements TomlNode {}

  /** A number with a point. */
  record Decimal(double number) implements TomlNode {}

  /** True or false. */
  record Truth(boolean holds) implements TomlNode {}

  /** A day. */
  record Day(LocalDate date) implements TomlNode {}

  /** An array. */
  record Items(List<TomlNode> items) implements TomlNode {
    public Items {
      items = List.copyOf(items);
    }
  }

  /** A table, its entries in their order. */
  record Entries(Map<String, TomlNode> entries) implements TomlNode {
    public static final Entries NONE = new Entries(Map.of());

    public Entries {
      entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
    }

    /** The same table with an entry, in its old place if it had one. */
    public Entries with(String key, TomlNode value) {
      Map<String, TomlNode> changed = new LinkedHashMap<>(entries);
      changed.put(key, value);
      return new Entries(changed);
    }

    public Entries without(String key) {
      Map<String, TomlNode> changed = new LinkedHashMap<>(entries);
      changed.remove(key);
      return new Entries(changed);
    }
  }
}
