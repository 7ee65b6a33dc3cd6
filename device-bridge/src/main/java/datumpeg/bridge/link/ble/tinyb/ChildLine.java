package datumpeg.bridge.link.ble.tinyb;

import datumpeg.bridge.frame.Bytes;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * One line between parent and child: {@code @WORD PART PART …}. The native library prints to the
 * same output, so a line without the mark is no line of ours. Texts and values go as hexadecimal
 * digits, an empty one as {@code -}.
 *
 * @param word what the line says
 * @param parts without blanks in them
 */
record ChildLine(String word, List<String> parts) {
  private static final String EMPTY = "-";

  ChildLine {
    parts = List.copyOf(parts);
  }

  static ChildLine of(String word, String... parts) {
    return new ChildLine(word, Arrays.asList(parts));
  }

  static Optional<ChildLine> parse(String line) {
    if (!line.startsWith("@") || line.length() < 2) {
      return Optional.empty();
    }
    List<String> words = Arrays.asList(line.substring(1).split(" "));
    return words.isEmpty() || words.get(0).isEmpty()
        ? Optional.empty()
        : Optional.of(new ChildLine(words.get(0), words.subList(1, words.size())));
  }

  String text() {
    return "@" + String.join(" ", word, String.join(" ", parts)).strip();
  }

  /** A part; empty where the line is too short. */
  String part(int index) {
    return index < parts.size() ? parts.get(index) : "";
  }

  /** A part as a whole number; -1 where it is none. */
  int number(int index) {
    String part = part(index);
    return part.matches("-?[0-9]{1,9}") ? Integer.parseInt(part) : -1;
  }

  /** A part as bytes; empty where it is none. */
  Bytes bytes(int index) {
    String part = part(index);
    boolean hex = part.matches("([0-9a-f]{2}){1,4096}");
    return hex ? Bytes.ofHex(part) : Bytes.empty();
  }

  /** A part as text. */
  String words(int index) {
    return new String(bytes(index).toArray(), StandardCharsets.UTF_8);
  }

  static String hex(Bytes bytes) {
    return bytes.isEmpty() ? EMPTY : bytes.hex();
  }

  static String hex(String text) {
    return hex(Bytes.of(text.getBytes(StandardCharsets.UTF_8)));
  }
}
