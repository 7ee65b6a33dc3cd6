package datumpeg.bridge.cli;

import java.util.ArrayList;
import java.util.List;

/** Text broken into lines at its spaces. */
final class Wrapped {
  private Wrapped() {}

  /**
   * The lines of a paragraph, none longer than the width unless one word is.
   *
   * @param first what the first line begins with
   * @param others what every other line begins with
   */
  static List<String> lines(String first, String others, String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(first);
    int begin = first.length();
    for (String word : text.strip().split("\\s+", -1)) {
      if (line.length() > begin && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line = new StringBuilder(others);
        begin = others.length();
      }
      line.append(line.length() > begin ? " " : "").append(word);
    }
    lines.add(line.toString());
    return lines;
  }
}
