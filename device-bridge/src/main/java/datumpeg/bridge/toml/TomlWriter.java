package datumpeg.bridge.toml;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.tomlj.Toml;

/**
 * Writes values as a TOML file: a table of the file under its own header, what stands deeper in one
 * line. Equal values give equal bytes, and reading them gives the values back.
 */
public final class TomlWriter {
  private static final Pattern BARE = Pattern.compile("[A-Za-z0-9_-]+");

  private final List<String> lines = new ArrayList<>();
  private final Map<Integer, String> paths = new HashMap<>();

  private TomlWriter() {}

  /**
   * A file as written.
   *
   * @param paths by line, from 1: which entry stands there, its keys joined by points
   */
  public record Written(String text, Map<Integer, String> paths) {
    public Written {
      paths = Map.copyOf(paths);
    }
  }

  public static Written write(TomlNode.Entries file) {
    TomlWriter writer = new TomlWriter();
    writer.file(file);
    String text = writer.lines.isEmpty() ? "" : String.join("\n", writer.lines) + "\n";
    return new Written(text, writer.paths);
  }

  private void file(TomlNode.Entries file) {
    file.entries()
        .forEach(
            (key, value) -> {
              if (!(value instanceof TomlNode.Entries)) {
                entry("", key, value);
              }
            });
    file.entries()
        .forEach(
            (key, value) -> {
              if (value instanceof TomlNode.Entries table) {
                table(key, key(key), table);
              }
            });
  }

  private void table(String path, String header, TomlNode.Entries table) {
    if (!table.entries().isEmpty()
        && table.entries().values().stream().allMatch(TomlNode.Entries.class::isInstance)) {
      table
          .entries()
          .forEach(
              (key, value) ->
                  leaf(path + "." + key, header + "." + key(key), (TomlNode.Entries) value));
    } else {
      leaf(path, header, table);
    }
  }

  private void leaf(String path, String header, TomlNode.Entries table) {
    if (!lines.isEmpty()) {
      lines.add("");
    }
    line(path, "[" + header + "]");
    table.entries().forEach((key, value) -> entry(path + ".", key, value));
  }

  private void entry(String prefix, String key, TomlNode value) {
    line(prefix + key, key(key) + " = " + inline(value));
  }

  private void line(String path, String text) {
    lines.add(text);
    paths.put(lines.size(), path);
  }

  private static String inline(TomlNode value) {
    if (value instanceof TomlNode.Text text) {
      return quoted(text.text());
    }
    if (value instanceof TomlNode.Whole whole) {
      return Long.toString(whole.number());
    }
    if (value instanceof TomlNode.Decimal decimal) {
      return decimal(decimal.number());
    }
    if (value instanceof TomlNode.Truth truth) {
      return Boolean.toString(truth.holds());
    }
    if (value instanceof TomlNode.Day day) {
      return day.date().toString();
    }
    if (value instanceof TomlNode.Items items) {
      return items.items().stream()
          .map(TomlWriter::inline)
          .collect(Collectors.joining(", ", "[", "]"));
    }
    Map<String, TomlNode> entries = ((TomlNode.Entries) value).entries();
    return entries.isEmpty()
        ? "{}"
        : entries.entrySet().stream()
            .map(entry -> key(entry.getKey()) + " = " + inline(entry.getValue()))
            .collect(Collectors.joining(", ", "{ ", " }"));
  }

  /** TOML 1.0.0, section Float: inf and nan have words, and a point or exponent must be there. */
  private static String decimal(double number) {
    if (Double.isNaN(number)) {
      return "nan";
    }
    if (Double.isInfinite(number)) {
      return number > 0 ? "inf" : "-inf";
    }
    return Double.toString(number);
  }

  private static String key(String key) {
    return BARE.matcher(key).matches() ? key : quoted(key);
  }

  private static String quoted(String text) {
    return "\"" + Toml.tomlEscape(text) + "\"";
  }
}
