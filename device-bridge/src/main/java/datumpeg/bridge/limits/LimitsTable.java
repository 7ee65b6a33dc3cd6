package datumpeg.bridge.limits;

import datumpeg.analysis.conform.Confidence;
import datumpeg.analysis.conform.LimitRow;
import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.TomlText;
import datumpeg.bridge.toml.Value;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The rows a job's tolerances may name. Immutable.
 *
 * @param rows in the order of the file
 */
public record LimitsTable(List<LimitRow> rows) {
  private static final String RESOURCE = "/datumpeg/limits.toml";

  public LimitsTable {
    rows = List.copyOf(rows);
  }

  /** The table that comes with the program. */
  public static LimitsTable ofProgram() {
    try (InputStream in = LimitsTable.class.getResourceAsStream(RESOURCE)) {
      if (in == null) {
        throw new IllegalStateException("The resource " + RESOURCE + " is missing.");
      }
      Mistakes mistakes = new Mistakes();
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      LimitsTable table = read(TomlText.read(text, RESOURCE, mistakes));
      if (!mistakes.isEmpty()) {
        throw new IllegalStateException(mistakes.text());
      }
      return table;
    } catch (IOException e) {
      throw new UncheckedIOException("The resource " + RESOURCE + " cannot be read.", e);
    }
  }

  /** Reads rows, one table each; rows with mistakes are left out. */
  static LimitsTable read(Table document) {
    List<LimitRow> rows = new ArrayList<>();
    for (String id : document.keys()) {
      document.findTable(id).flatMap(table -> row(id, table)).ifPresent(rows::add);
    }
    return new LimitsTable(rows);
  }

  public Optional<LimitRow> find(String id) {
    return rows.stream().filter(row -> row.id().equals(id)).findFirst();
  }

  public List<String> ids() {
    return rows.stream().map(LimitRow::id).toList();
  }

  private static Optional<LimitRow> row(String id, Table table) {
    int before = table.mistakes().count();
    Optional<LimitRow> row =
        RuleText.read(table)
            .map(
                rule ->
                    new LimitRow(
                        id,
                        rule,
                        text(table, "source"),
                        text(table, "clause"),
                        text(table, "edition"),
                        confidence(table),
                        text(table, "note")));
    table.refuseOthers();
    return table.mistakes().count() == before ? row : Optional.empty();
  }

  private static Confidence confidence(Table table) {
    Optional<Value> value = table.require("confidence");
    String word = value.flatMap(Value::text).orElse("");
    for (Confidence confidence : Confidence.values()) {
      if (confidence.text().equals(word)) {
        return confidence;
      }
    }
    value.ifPresent(
        at ->
            at.mistake(
                "'"
                    + at.name()
                    + "' is \""
                    + word
                    + "\"; expected one of "
                    + Arrays.stream(Confidence.values())
                        .map(Confidence::text)
                        .collect(Collectors.joining(", "))
                    + "."));
    return Confidence.MEMORY_LOW;
  }

  private static String text(Table table, String key) {
    return table.require(key).flatMap(Value::text).orElse("");
  }
}
