package datumpeg.bridge.jobfile;

import datumpeg.bridge.toml.TomlNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The table of a limit as one line that a person can type, and back. Its parts stand one after
 * another, with a comma or semicolon between two:
 *
 * <ul>
 *   <li>{@code lower -5 mm, upper 10 mm} · {@code ratio 500, cap 25 mm} · {@code rule ID} · {@code
 *       formula max(4, 1.5*sqrt(L))}, whose commas are its own
 *   <li>{@code up to 3 m: 8 mm, beyond: 12 mm}: each limit up to and including its size
 *   <li>{@code at 1 m: 10 mm, at 4 m: 13 mm, linear between, to whole mm}: on the straight line
 *       between two sizes
 *   <li>{@code up to 5 m: 10 mm, beyond: 9 mm + 0.2 mm per m}: what grows with the size
 *   <li>{@code source TEXT} at the end of any of them: the rest is the source
 * </ul>
 */
final class LimitLine {
  /** A comma between two digits is a decimal mark. */
  private static final Pattern BETWEEN = Pattern.compile("\\s*(?:;|(?<!\\d),|,(?!\\d))\\s*");

  private static final Pattern SOURCE = Pattern.compile("\\s*[,;]\\s*source\\s+(.+)$");
  private static final Pattern OF_STEPS =
      Pattern.compile("(?:^|\\s)(?:up to|at|beyond)(?:\\s|:|$)");

  private static final String EXPECTED =
      "expected steps such as \"up to 3 m: 8 mm, beyond: 12 mm\", or \"at 1 m: 10 mm, at 4 m:"
          + " 13 mm\" with the straight line between them";

  private LimitLine() {}

  /** A table as one line; empty for a table that no line stands for. */
  static Optional<String> of(TomlNode.Entries table) {
    Map<String, TomlNode> left = new LinkedHashMap<>(table.entries());
    List<String> parts = new ArrayList<>();
    boolean linear = new TomlNode.Text("linear").equals(left.remove("interpolate"));
    for (String key : List.of("steps", "pieces")) {
      if (left.remove(key) instanceof TomlNode.Items items) {
        items.items().forEach(item -> parts.add(step(item, linear ? "at " : "up to ")));
      }
    }
    if (linear) {
      parts.add(LimitParts.LINEAR);
    }
    if (left.remove("round") instanceof TomlNode.Text round) {
      parts.add("to whole " + round.text().replaceFirst("^1 ", ""));
    }
    String source = text(left, "source");
    left.remove("source");
    left.forEach((key, value) -> parts.add(key + " " + DraftText.of(value)));
    String line = String.join(", ", parts) + (source.isEmpty() ? "" : ", source " + source);
    return Optional.of(line).filter(text -> table(text).filter(table::equals).isPresent());
  }

  private static String step(TomlNode item, String where) {
    Map<String, TomlNode> step =
        item instanceof TomlNode.Entries table ? table.entries() : Map.of();
    String size = step.containsKey("up_to") ? where + text(step, "up_to") + ": " : "beyond: ";
    String limit = text(step, "limit") + text(step, "constant");
    return step.containsKey("per_metre")
        ? size + (limit.isEmpty() ? "" : limit + " + ") + text(step, "per_metre") + " per m"
        : size + limit;
  }

  private static String text(Map<String, TomlNode> entries, String key) {
    return entries.get(key) instanceof TomlNode.Text text ? text.text() : "";
  }

  /** The table that a line stands for; empty for a text that is none. */
  static Optional<TomlNode.Entries> table(String line) {
    Matcher source = SOURCE.matcher(line);
    boolean sourced = source.find();
    LimitParts taken = new LimitParts();
    boolean understood =
        parts(sourced ? line.substring(0, source.start()) : line).allMatch(taken::take);
    if (!understood || taken.isMixed()) {
      return Optional.empty();
    }
    TomlNode.Entries table = new TomlNode.Entries(taken.entries());
    return Optional.of(
        sourced ? table.with("source", new TomlNode.Text(String.valueOf(source.group(1)))) : table);
  }

  private static Stream<String> parts(String rule) {
    String stripped = rule.strip();
    return stripped.startsWith(LimitParts.FORMULA)
        ? Stream.of(stripped)
        : Stream.of(BETWEEN.split(stripped, -1));
  }

  /**
   * What is wrong with a text that speaks of steps, to go on a sentence that has named the text;
   * empty for a text that does not.
   */
  static Optional<String> trouble(String text) {
    if (!OF_STEPS.matcher(text).find()) {
      return Optional.empty();
    }
    LimitParts taken = new LimitParts();
    Optional<String> strange =
        parts(SOURCE.matcher(text).replaceFirst("")).filter(part -> !taken.take(part)).findFirst();
    if (strange.isPresent()) {
      return Optional.of("of which \"" + strange.get() + "\" is no step; " + EXPECTED);
    }
    return Optional.of(
        taken.isMixed()
            ? "which mixes limits up to a size with limits at a size; " + EXPECTED
            : "which a job file spells out: { steps = [{ up_to = \"3 m\", limit = \"8 mm\" },"
                + " { limit = \"12 mm\" }], interpolate = \"none\" }");
  }
}
