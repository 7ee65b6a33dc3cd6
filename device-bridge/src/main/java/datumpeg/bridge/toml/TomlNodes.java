package datumpeg.bridge.toml;

import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.mistake.Place;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlInvalidTypeException;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/** Reads a TOML file as values. Comments are not among them. */
public final class TomlNodes {
  private TomlNodes() {}

  /**
   * The file's outermost table. What breaks the rules of TOML is added to the mistakes; the table
   * then holds only part of the file. Times of day, which no file of ours has, become texts.
   */
  public static TomlNode.Entries read(String text, String file, Mistakes mistakes) {
    TomlParseResult parsed = Toml.parse(text.startsWith("\uFEFF") ? text.substring(1) : text);
    for (TomlParseError error : parsed.errors()) {
      mistakes.add(
          new Place(file, error.position().line(), error.position().column()),
          "This is not TOML: " + error.getMessage());
    }
    return table(parsed);
  }

  private static TomlNode.Entries table(TomlTable table) {
    List<String> keys = new ArrayList<>(table.keySet());
    keys.sort(Comparator.comparing(key -> place(table, key)));
    Map<String, TomlNode> entries = new LinkedHashMap<>();
    for (String key : keys) {
      @Nullable Object value = table.get(List.of(key));
      if (value != null) {
        entries.put(key, node(value));
      }
    }
    return new TomlNode.Entries(entries);
  }

  private static long place(TomlTable table, String key) {
    try {
      @Nullable TomlPosition position = table.inputPositionOf(List.of(key));
      return position == null ? 0 : position.line() * 100_000L + position.column();
    } catch (TomlInvalidTypeException e) {
      return 0;
    }
  }

  private static TomlNode node(Object value) {
    if (value instanceof TomlTable table) {
      return table(table);
    }
    if (value instanceof TomlArray array) {
      return new TomlNode.Items(array.toList().stream().map(TomlNodes::node).toList());
    }
    if (value instanceof Long number) {
      return new TomlNode.Whole(number);
    }
    if (value instanceof Double number) {
      return new TomlNode.Decimal(number);
    }
    if (value instanceof Boolean holds) {
      return new TomlNode.Truth(holds);
    }
    return value instanceof LocalDate date
        ? new TomlNode.Day(date)
        : new TomlNode.Text(value.toString());
  }
}
