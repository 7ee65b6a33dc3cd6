package datumpeg.bridge.frame;

import java.util.ArrayList;
import java.util.List;

/**
 * A piece of a line: a word, a run of digits and separators, blanks, or one other character.
 *
 * @param kind which
 * @param text as written
 */
record LineToken(Kind kind, String text) {

  enum Kind {
    /**
     * A letter, then letters and digits; directly after a number letters only ({@code 29ft6in}).
     */
    WORD,
    /** Digits, points and commas, among them a digit. */
    NUMBER,
    BLANK,
    /** One other character. */
    MARK
  }

  boolean is(Kind wanted) {
    return kind == wanted;
  }

  boolean isMarkOf(String characters) {
    return kind == Kind.MARK && characters.contains(text);
  }

  /** Cuts a text into tokens in one pass; joined again they are the text. */
  static List<LineToken> scan(String text) {
    List<LineToken> tokens = new ArrayList<>();
    int start = 0;
    while (start < text.length()) {
      boolean afterNumber = !tokens.isEmpty() && tokens.get(tokens.size() - 1).is(Kind.NUMBER);
      Kind kind = kindAt(text, start);
      int end = end(text, start, kind, afterNumber);
      tokens.add(new LineToken(kind, text.substring(start, end)));
      start = end;
    }
    return tokens;
  }

  private static Kind kindAt(String text, int index) {
    char first = text.charAt(index);
    if (isBlank(first)) {
      return Kind.BLANK;
    }
    if (Character.isLetter(first) && first != '\u00BA') {
      return Kind.WORD;
    }
    boolean separated =
        isSeparator(first) && index + 1 < text.length() && isDigit(text.charAt(index + 1));
    return isDigit(first) || separated ? Kind.NUMBER : Kind.MARK;
  }

  private static int end(String text, int start, Kind kind, boolean afterNumber) {
    int end = start + 1;
    while (kind != Kind.MARK
        && end < text.length()
        && continues(kind, text.charAt(end), afterNumber)) {
      end++;
    }
    return end;
  }

  private static boolean continues(Kind kind, char next, boolean afterNumber) {
    return switch (kind) {
      case WORD ->
          (Character.isLetter(next) && next != '\u00BA') || (isDigit(next) && !afterNumber);
      case NUMBER -> isDigit(next) || isSeparator(next);
      case BLANK -> isBlank(next);
      case MARK -> false;
    };
  }

  private static boolean isBlank(char value) {
    return value == ' ' || value == '\t' || value == '\u00A0';
  }

  private static boolean isDigit(char value) {
    return value >= '0' && value <= '9';
  }

  private static boolean isSeparator(char value) {
    return value == '.' || value == ',';
  }
}
