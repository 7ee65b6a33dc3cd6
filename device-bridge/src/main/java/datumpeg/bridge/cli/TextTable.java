package datumpeg.bridge.cli;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;

/** Rows of text in columns: the first column stands left, the others stand right. One thread. */
final class TextTable {
  private final List<List<String>> rows = new ArrayList<>();
  private final boolean numbersRight;

  private TextTable(boolean numbersRight) {
    this.numbersRight = numbersRight;
  }

  /** A table whose columns after the first hold numbers. */
  static TextTable ofNumbers() {
    return new TextTable(true);
  }

  static TextTable ofWords() {
    return new TextTable(false);
  }

  TextTable row(String... cells) {
    return row(List.of(cells));
  }

  TextTable row(List<String> cells) {
    rows.add(List.copyOf(cells));
    return this;
  }

  void print(PrintStream out, String indent) {
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder(indent);
      for (int i = 0; i < row.size(); i++) {
        String cell = row.get(i);
        String blanks = " ".repeat(width(i) - length(cell));
        line.append(i == 0 ? "" : "  ")
            .append(numbersRight && i > 0 ? blanks + cell : cell + blanks);
      }
      out.println(line.toString().stripTrailing());
    }
  }

  private int width(int column) {
    return rows.stream()
        .filter(row -> column < row.size())
        .mapToInt(row -> length(row.get(column)))
        .max()
        .orElse(0);
  }

  private static int length(String text) {
    return text.codePointCount(0, text.length());
  }
}
