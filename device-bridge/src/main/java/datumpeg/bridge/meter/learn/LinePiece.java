package datumpeg.bridge.meter.learn;

import datumpeg.bridge.frame.LinePattern.DecimalMark;
import java.util.ArrayList;
import java.util.List;

/**
 * A piece of a line as the search sees it.
 *
 * @param text as written
 */
record LinePiece(Kind kind, String text) {
  private static final String SIGNS = "+-\u2212";

  enum Kind {
    NUMBER,
    WORD,
    BLANK,
    MARK
  }

  boolean is(Kind wanted) {
    return kind == wanted;
  }

  /** What the number says, with a point whatever the line writes. */
  double number() {
    String plain = text.replace('\u2212', '-').replace(',', '.').replaceAll("[ \t\u00A0]", "");
    return Double.parseDouble(plain);
  }

  /** Cuts a line into pieces; joined again they are the line. */
  static List<LinePiece> cut(String line, DecimalMark mark) {
    List<LinePiece> pieces = new ArrayList<>();
    int start = 0;
    while (start < line.length()) {
      Kind kind = kind(line, start, pieces);
      int end =
          switch (kind) {
            case NUMBER -> numberEnd(line, start, mark.text().charAt(0));
            case WORD -> wordEnd(line, start);
            case BLANK -> blankEnd(line, start);
            case MARK -> start + 1;
          };
      pieces.add(new LinePiece(kind, line.substring(start, end)));
      start = end;
    }
    return pieces;
  }

  private static Kind kind(String line, int start, List<LinePiece> before) {
    char first = line.charAt(start);
    if (isBlank(first)) {
      return Kind.BLANK;
    }
    boolean afterWord =
        !before.isEmpty()
            && (before.get(before.size() - 1).is(Kind.WORD)
                || before.get(before.size() - 1).is(Kind.NUMBER));
    boolean signed = SIGNS.indexOf(first) >= 0 && !afterWord && isDigit(line, signEnd(line, start));
    if (isDigit(line, start) || signed) {
      return Kind.NUMBER;
    }
    return Character.isLetter(first) ? Kind.WORD : Kind.MARK;
  }

  private static int signEnd(String line, int start) {
    int end = start + 1;
    while (end < line.length() && isBlank(line.charAt(end))) {
      end++;
    }
    return end;
  }

  private static int numberEnd(String line, int start, char mark) {
    int end = SIGNS.indexOf(line.charAt(start)) >= 0 ? signEnd(line, start) : start;
    while (isDigit(line, end)) {
      end++;
    }
    if (end < line.length() && line.charAt(end) == mark && isDigit(line, end + 1)) {
      end++;
      while (isDigit(line, end)) {
        end++;
      }
    }
    return end;
  }

  private static int wordEnd(String line, int start) {
    int end = start + 1;
    while (end < line.length() && (Character.isLetter(line.charAt(end)) || isDigit(line, end))) {
      end++;
    }
    return end;
  }

  private static int blankEnd(String line, int start) {
    int end = start + 1;
    while (end < line.length() && isBlank(line.charAt(end))) {
      end++;
    }
    return end;
  }

  private static boolean isBlank(char value) {
    return value == ' ' || value == '\t' || value == '\u00A0';
  }

  private static boolean isDigit(String line, int index) {
    return index < line.length() && line.charAt(index) >= '0' && line.charAt(index) <= '9';
  }
}
