package datumpeg.bridge.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A page of the documents, as tests read it: its fenced blocks and the rows of its tables. In what
 * a page shows of printed text, … stands for anything: alone on a line for any lines, within a line
 * for any characters.
 */
final class DocumentPage {
  static final Path ROOT = Path.of(System.getProperty("datumpeg.root", ".."));
  private static final String ANYTHING = "…";

  private final List<String> lines;

  DocumentPage(String name) throws IOException {
    this.lines = Files.readAllLines(ROOT.resolve("docs").resolve(name));
  }

  /** The contents of the blocks fenced with the given words, line by line. */
  List<List<String>> blocks(String fence) {
    List<List<String>> blocks = new ArrayList<>();
    boolean inside = false;
    for (String line : lines) {
      if (line.startsWith("```")) {
        inside = !inside && line.equals("```" + fence);
        if (inside) {
          blocks.add(new ArrayList<>());
        }
      } else if (inside) {
        blocks.get(blocks.size() - 1).add(line);
      }
    }
    return blocks;
  }

  /** Whether the words stand on the page. */
  boolean says(String words) {
    return lines.stream().anyMatch(line -> line.contains(words));
  }

  /** The lines below a line. */
  List<String> after(String line) {
    return lines.subList(lines.indexOf(line) + 1, lines.size());
  }

  /** The rows of all tables whose head begins with the given words, each as its stripped cells. */
  List<List<String>> table(String head) {
    List<List<String>> rows = new ArrayList<>();
    boolean inside = false;
    for (String line : lines) {
      if (line.startsWith("| " + head)) {
        inside = true;
      } else if (!line.startsWith("|")) {
        inside = false;
      } else if (inside && !line.startsWith("|-")) {
        rows.add(cells(line));
      }
    }
    return rows;
  }

  private static List<String> cells(String line) {
    String[] parts = line.split("(?<!\\\\)\\|", -1);
    List<String> cells = new ArrayList<>();
    for (int i = 1; i < parts.length - 1; i++) {
      cells.add(parts[i].strip().replace("`", ""));
    }
    return cells;
  }

  /**
   * The first line of a page that was not printed where the page says; empty if all were.
   *
   * @param shown what the page shows
   * @param printed what was printed
   */
  static String firstMissing(List<String> shown, List<String> printed) {
    int next = 0;
    boolean anywhere = false;
    for (String line : shown) {
      if (line.equals(ANYTHING)) {
        anywhere = true;
        continue;
      }
      int at = next;
      while (anywhere && at < printed.size() && !fits(line, printed.get(at))) {
        at++;
      }
      if (at >= printed.size() || !fits(line, printed.get(at))) {
        return line;
      }
      next = at + 1;
      anywhere = false;
    }
    return anywhere || next == printed.size() ? "" : "the end, before: " + printed.get(next);
  }

  /** Whether a line was printed as shown; spaces at its end do not count. */
  static boolean fits(String shown, String printed) {
    StringBuilder pattern = new StringBuilder();
    for (String part : shown.split(ANYTHING, -1)) {
      pattern.append(pattern.length() == 0 ? "" : ".*").append(Pattern.quote(part));
    }
    return Pattern.matches(pattern.toString(), printed.stripTrailing());
  }
}
