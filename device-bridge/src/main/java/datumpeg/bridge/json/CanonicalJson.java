package datumpeg.bridge.json;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The one text of a JSON value that digests are taken of.
 *
 * <p>RFC 8785 (A. Rundgren, B. Jordan, S. Erdtman, "JSON Canonicalization Scheme (JCS)", 2020),
 * section 3.2: no white space, members sorted by their names' UTF-16 code units, the shortest
 * escapes. Restricted to strings, integers, booleans, null, arrays and objects: a number with a
 * fraction has no canonical form here, because its digits would depend on how it was computed.
 */
public final class CanonicalJson {
  /** Integers beyond this are not exact in every JSON reader (RFC 7493, section 2.2). */
  public static final long LARGEST_INTEGER = (1L << 53) - 1;

  private static final String HEX_DIGITS = "0123456789abcdef";

  private CanonicalJson() {}

  /**
   * @throws IllegalArgumentException if the value holds a decimal number, an integer beyond {@link
   *     #LARGEST_INTEGER} or a text with half of a surrogate pair
   */
  public static String text(JsonValue value) {
    StringBuilder out = new StringBuilder(1024);
    write(value, out);
    return out.toString();
  }

  /** The canonical text in UTF-8. */
  public static byte[] bytes(JsonValue value) {
    return text(value).getBytes(StandardCharsets.UTF_8);
  }

  private static void write(JsonValue value, StringBuilder out) {
    if (value instanceof JsonText text) {
      writeText(text.value(), out);
    } else if (value instanceof JsonInteger integer) {
      writeInteger(integer.value(), out);
    } else if (value instanceof JsonObject object) {
      writeObject(object.members(), out);
    } else if (value instanceof JsonArray array) {
      writeArray(array.items(), out);
    } else if (value instanceof JsonBoolean truth) {
      out.append(truth.value());
    } else if (value instanceof JsonNull) {
      out.append("null");
    } else {
      throw new IllegalArgumentException(
          "only strings, integers, booleans, null, arrays and objects have a canonical form, found "
              + value.describe());
    }
  }

  private static void writeObject(Map<String, JsonValue> members, StringBuilder out) {
    // String.compareTo orders by UTF-16 code units, as RFC 8785 section 3.2.3 asks.
    String separator = "{";
    for (Map.Entry<String, JsonValue> member : sorted(members).entrySet()) {
      out.append(separator);
      writeText(member.getKey(), out);
      out.append(':');
      write(member.getValue(), out);
      separator = ",";
    }
    out.append(members.isEmpty() ? "{}" : "}");
  }

  /** As they are when they were put in order, which the record's rows are. */
  private static Map<String, JsonValue> sorted(Map<String, JsonValue> members) {
    String before = "";
    for (String name : members.keySet()) {
      if (name.compareTo(before) < 0) {
        return new TreeMap<>(members);
      }
      before = name;
    }
    return members;
  }

  private static void writeArray(List<JsonValue> items, StringBuilder out) {
    out.append('[');
    for (int i = 0; i < items.size(); i++) {
      if (i > 0) {
        out.append(',');
      }
      write(items.get(i), out);
    }
    out.append(']');
  }

  private static void writeInteger(long value, StringBuilder out) {
    if (value > LARGEST_INTEGER || value < -LARGEST_INTEGER) {
      throw new IllegalArgumentException(
          "an integer beyond ±(2^53 − 1) has no canonical form: " + value);
    }
    out.append(value);
  }

  /** Copies what needs no escape in runs: nearly all of a text does not. */
  private static void writeText(String text, StringBuilder out) {
    out.append('"');
    int run = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (Character.isSurrogate(c)) {
        requirePair(text, i);
        i++;
      } else if (c < ' ' || c == '"' || c == '\\') {
        out.append(text, run, i);
        writeEscape(c, out);
        run = i + 1;
      }
    }
    out.append(text, run, text.length()).append('"');
  }

  private static void writeEscape(char c, StringBuilder out) {
    switch (c) {
      case '"' -> out.append("\\\"");
      case '\\' -> out.append("\\\\");
      case '\b' -> out.append("\\b");
      case '\t' -> out.append("\\t");
      case '\n' -> out.append("\\n");
      case '\f' -> out.append("\\f");
      case '\r' -> out.append("\\r");
      default ->
          out.append("\\u00").append(HEX_DIGITS.charAt(c >> 4)).append(HEX_DIGITS.charAt(c & 15));
    }
  }

  private static void requirePair(String text, int index) {
    if (index + 1 >= text.length()
        || !Character.isSurrogatePair(text.charAt(index), text.charAt(index + 1))) {
      throw new IllegalArgumentException(
          "half of a surrogate pair at character " + index + " has no canonical form");
    }
  }
}
