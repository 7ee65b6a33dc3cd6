package datumpeg.bridge.frame;

import datumpeg.analysis.quantity.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Finds the unit that stands at a place of a line. */
final class LineUnits {
  /** How units are written out, small letters. */
  private static final Map<String, Unit> WORDS =
      Map.ofEntries(
          Map.entry("m", Unit.METRE),
          Map.entry("metre", Unit.METRE),
          Map.entry("metres", Unit.METRE),
          Map.entry("meter", Unit.METRE),
          Map.entry("meters", Unit.METRE),
          Map.entry("mm", Unit.MILLIMETRE),
          Map.entry("cm", Unit.CENTIMETRE),
          Map.entry("ft", Unit.FOOT),
          Map.entry("foot", Unit.FOOT),
          Map.entry("feet", Unit.FOOT),
          Map.entry("in", Unit.INCH),
          Map.entry("inch", Unit.INCH),
          Map.entry("inches", Unit.INCH),
          Map.entry("deg", Unit.DEGREE),
          Map.entry("degree", Unit.DEGREE),
          Map.entry("degrees", Unit.DEGREE),
          Map.entry("rad", Unit.RADIAN));

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
  record Found(Unit unit, int tokenCount) {}

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
      return new Found(Unit.DEGREE, 1);
    }
    if (token.isMarkOf("%")) {
      return new Found(Unit.PERCENT, 1);
    }
    if (token.isMarkOf(INCH_MARKS)) {
      return new Found(Unit.INCH, 1);
    }
    if (token.isMarkOf(FOOT_MARKS)) {
      boolean twice = index + 1 < tokens.size() && tokens.get(index + 1).isMarkOf(FOOT_MARKS);
      return twice ? new Found(Unit.INCH, 2) : new Found(Unit.FOOT, 1);
    }
    return null;
  }

  private static @Nullable Found word(List<LineToken> tokens, int index) {
    Unit unit = ofWord(tokens.get(index).text());
    if (unit == null) {
      return null;
    }
    boolean slope =
        unit == Unit.MILLIMETRE
            && index + 2 < tokens.size()
            && tokens.get(index + 1).isMarkOf("/")
            && ofWord(tokens.get(index + 2).text()) == Unit.METRE;
    return slope ? new Found(Unit.MILLIMETRE_PER_METRE, 3) : new Found(unit, 1);
  }

  static @Nullable Unit ofWord(String word) {
    return WORDS.get(word.toLowerCase(Locale.ROOT));
  }
}
