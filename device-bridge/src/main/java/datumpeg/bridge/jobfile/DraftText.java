package datumpeg.bridge.jobfile;

import datumpeg.bridge.jobfile.JobDraft.Kind;
import datumpeg.bridge.toml.TomlNode;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * An entry of a job file as the text that a person sees, and back. What is not of its kind is
 * written as a text, and the reader of job files says what it expected.
 */
final class DraftText {
  private static final Pattern SEMICOLON = Pattern.compile(";(?![^(]*\\))");
  private static final Pattern COMMA = Pattern.compile(",(?![^(]*\\))");

  private DraftText() {}

  static String of(TomlNode node) {
    if (node instanceof TomlNode.Text text) {
      return text.text();
    }
    if (node instanceof TomlNode.Whole whole) {
      return Long.toString(whole.number());
    }
    if (node instanceof TomlNode.Decimal decimal) {
      return Double.toString(decimal.number());
    }
    if (node instanceof TomlNode.Truth truth) {
      return Boolean.toString(truth.holds());
    }
    if (node instanceof TomlNode.Day day) {
      return day.date().toString();
    }
    return node instanceof TomlNode.Items items ? list(items) : table((TomlNode.Entries) node);
  }

  private static String list(TomlNode.Items items) {
    List<String> texts = items.items().stream().map(DraftText::of).toList();
    boolean commas = texts.stream().anyMatch(text -> COMMA.matcher(text).find());
    return String.join(commas ? "; " : ", ", texts);
  }

  private static String table(TomlNode.Entries table) {
    return table.entries().entrySet().stream()
        .map(entry -> entry.getKey() + " " + of(entry.getValue()))
        .collect(Collectors.joining(", "));
  }

  static TomlNode node(Kind kind, String text) {
    return switch (kind) {
      case TEXT -> new TomlNode.Text(text);
      case LIST -> items(text);
      case DAY -> day(text);
      case WHOLE -> whole(text);
      case NUMBER -> number(text);
      case TRUTH -> truth(text);
      case LIMIT ->
          LimitLine.table(text)
              .<TomlNode>map(table -> table)
              .orElseGet(() -> new TomlNode.Text(text));
    };
  }

  private static TomlNode items(String text) {
    return new TomlNode.Items(
        Stream.of(between(text).split(text, -1))
            .map(String::strip)
            .filter(item -> !item.isEmpty())
            .map(item -> (TomlNode) new TomlNode.Text(item))
            .toList());
  }

  /** Semicolons where there are any, since a comma may be a decimal mark; none in parentheses. */
  private static Pattern between(String text) {
    return SEMICOLON.matcher(text).find() ? SEMICOLON : COMMA;
  }

  private static TomlNode day(String text) {
    try {
      return new TomlNode.Day(LocalDate.parse(text));
    } catch (DateTimeParseException e) {
      return new TomlNode.Text(text);
    }
  }

  private static TomlNode whole(String text) {
    try {
      return new TomlNode.Whole(Long.parseLong(text));
    } catch (NumberFormatException e) {
      return new TomlNode.Text(text);
    }
  }

  /** A number with a point, or with one comma in place of it. */
  private static TomlNode number(String text) {
    if (!text.matches("[-+]?[0-9]{1,12}[.,][0-9]{1,12}")) {
      return whole(text);
    }
    return new TomlNode.Decimal(Double.parseDouble(text.replace(',', '.')));
  }

  private static TomlNode truth(String text) {
    return text.equals("true") || text.equals("false")
        ? new TomlNode.Truth(Boolean.parseBoolean(text))
        : new TomlNode.Text(text);
  }
}
