package datumpeg.bridge.frame;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Finds the unit that stands at a place of a line. */
final class LineUnits {
  /** How units are written out, small letters. */
  private static final Map<String, LineUnit> WORDS =
      Map.ofEntries(
          Map.entry("m", LineUnit.METRE),
          Map.entry("metre", LineUnit.METRE),
          Map.entry("metres", LineUnit.METRE),
          Map.entry("meter", LineUnit.METRE),
          Map.entry("meters", LineUnit.METRE),
          Map.entry("mm", LineUnit.MILLIMETRE),
          Map.entry("cm", LineUnit.CENTIMETRE),
          Map.entry("ft", LineUnit.FOOT),
          Map.entry("foot", LineUnit.FOOT),
          Map.entry("feet", LineUnit.FOOT),
          Map.entry("in", LineUnit.INCH),
          Map.entry("inch", LineUnit.INCH),
          Map.entry("inches", LineUnit.INCH),
          Map.entry("deg", LineUnit.DEGREE),
          Map.entry("degree", LineUnit.DEGREE),
          Map.entry("degrees", LineUnit.DEGREE),
          Map.entry("rad", LineUnit.RADIAN));

  private static final String DEGREE_MARKS = "\u00B0\u00BA";
  private static final String FOOT_MARKS = "'\u2032\u2019";
  private static final String INCH_MARKS = "\"\u2033\u201D";

  private LineUnits() {}

  /**
   * A unit and the tokens it takes.
   *
   * @param unit the unit
   * @param tokenCount how many tokens it takes
   */
  record Found(LineUnit unit, int tokenCount) {}

  /** The unit whose first token has this index, or null. */
  static @Nullable Found at(List<LineToken> tokens, int index) {
    if (index >= tokens.size()) {
      return null;
    }
    LineToken token = tokens.get(index);
    if (token.is(LineToken.Kind.WORD)) {
      return word(tokens, index);
    }
    if (token.isMarkOf(DEGREE_MARKS)) {
      return new Found(LineUnit.DEGREE, 1);
    }
    if (token.isMarkOf("%")) {
      return new Found(LineUnit.PERCENT, 1);
    }
    if (token.isMarkOf(INCH_MARKS)) {
      return new Found(LineUnit.INCH, 1);
    }
    if (token.isMarkOf(FOOT_MARKS)) {
      boolean twice = index + 1 < tokens.size() && tokens.get(index + 1).isMarkOf(FOOT_MARKS);
      return twice ? new Found(LineUnit.INCH, 2) : new Found(LineUnit.FOOT, 1);
    }
    return null;
  }

  private static @Nullable Found word(List<LineToken> tokens, int index) {
    LineUnit unit = ofWord(tokens.get(index).text());
    if (unit == null) {
      return null;
    }
    boolean slope =
        unit == LineUnit.MILLIMETRE
            && index + 2 < tokens.size()
            && tokens.get(index + 1).isMarkOf("/")
            && ofWord(tokens.get(index + 2).text()) == LineUnit.METRE;
    return slope ? new Found(LineUnit.MILLIMETRE_PER_METRE, 3) : new Found(unit, 1);
  }

  static @Nullable LineUnit ofWord(String word) {
    return WORDS.get(word.toLowerCase(Locale.ROOT));
  }
}
