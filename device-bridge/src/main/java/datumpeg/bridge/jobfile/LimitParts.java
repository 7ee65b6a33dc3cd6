package datumpeg.bridge.jobfile;

import datumpeg.bridge.toml.TomlNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The parts of a {@link LimitLine} taken so far. One thread. */
final class LimitParts {
  static final String FORMULA = "formula ";
  static final String LINEAR = "linear between";
  private static final String NOT_LINEAR = "not interpolated";
  private static final Pattern NAMED = Pattern.compile("(lower|upper|ratio|cap|rule)\\s+(.+)");
  private static final Pattern SIZED = Pattern.compile("(?:up to|at)\\s+([^:]+?)\\s*:\\s*(.+)");
  private static final Pattern BEYOND = Pattern.compile("beyond\\s*:?\\s*(.+)");
  private static final Pattern GROWING = Pattern.compile("(?:(.+?)\\s*\\+\\s*)?(.+?)\\s+per m");
  private static final Pattern WHOLE = Pattern.compile("to whole\\s+(.+)");

  private final Map<String, TomlNode> named = new LinkedHashMap<>();
  private final List<Map<String, TomlNode>> steps = new ArrayList<>();
  private boolean ranges;
  private boolean points;
  private boolean growing;

  /** Takes a part; false if it is none. */
  boolean take(String part) {
    Matcher sized = SIZED.matcher(part);
    Matcher beyond = BEYOND.matcher(part);
    if (sized.matches()) {
      points |= part.startsWith("at");
      ranges |= part.startsWith("up to");
      step(sized.group(1), String.valueOf(sized.group(2)));
      return true;
    }
    if (beyond.matches()) {
      step(null, String.valueOf(beyond.group(1)));
      return true;
    }
    points |= part.equals(LINEAR);
    ranges |= part.equals(NOT_LINEAR);
    return part.equals(LINEAR) || part.equals(NOT_LINEAR) || takeNamed(part);
  }

  private boolean takeNamed(String part) {
    Matcher whole = WHOLE.matcher(part);
    Matcher entry = NAMED.matcher(part);
    if (part.startsWith(FORMULA)) {
      put("formula", part.substring(FORMULA.length()).strip());
    } else if (whole.matches()) {
      String length = String.valueOf(whole.group(1));
      put("round", Character.isDigit(length.charAt(0)) ? length : "1 " + length);
    } else if (entry.matches() && part.startsWith("ratio")) {
      named.put("ratio", DraftText.node(JobDraft.Kind.NUMBER, String.valueOf(entry.group(2))));
    } else if (entry.matches()) {
      put(String.valueOf(entry.group(1)), String.valueOf(entry.group(2)));
    } else {
      return false;
    }
    return true;
  }

  private void put(String key, String text) {
    named.put(key, new TomlNode.Text(text));
  }

  private void step(@Nullable String size, String limit) {
    Map<String, TomlNode> step = new LinkedHashMap<>();
    Matcher more = GROWING.matcher(limit);
    boolean grows = more.matches();
    growing |= grows;
    put(step, "up_to", size);
    put(step, "limit", grows ? more.group(1) : limit);
    put(step, "per_metre", grows ? more.group(2) : null);
    steps.add(step);
  }

  private static void put(Map<String, TomlNode> step, String key, @Nullable String text) {
    if (text != null) {
      step.put(key, new TomlNode.Text(text));
    }
  }

  /** Whether it speaks both of ranges of sizes and of points between which it is linear. */
  boolean isMixed() {
    return points && (ranges || growing);
  }

  /** The entries of the table; where one step grows with the size, all are pieces. */
  Map<String, TomlNode> entries() {
    Map<String, TomlNode> entries = new LinkedHashMap<>();
    if (growing) {
      entries.put("pieces", items(steps.stream().map(LimitParts::piece).toList()));
    } else if (!steps.isEmpty()) {
      entries.put("steps", items(steps));
      entries.put("interpolate", new TomlNode.Text(points ? "linear" : "none"));
    }
    entries.putAll(named);
    return entries;
  }

  private static TomlNode items(List<Map<String, TomlNode>> tables) {
    return new TomlNode.Items(
        tables.stream().map(table -> (TomlNode) new TomlNode.Entries(table)).toList());
  }

  private static Map<String, TomlNode> piece(Map<String, TomlNode> step) {
    Map<String, TomlNode> piece = new LinkedHashMap<>();
    step.forEach((key, value) -> piece.put(key.equals("limit") ? "constant" : key, value));
    return piece;
  }
}
