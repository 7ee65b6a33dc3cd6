package datumpeg.bridge.collect;

import datumpeg.bridge.link.replay.CaptureEntry.Act;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the text of an act says beside its kind: which value it is about, counted from 1 over all
 * values of the session in the order in which they came, and which round a target is asked for in.
 */
final class ActText {
  private static final Pattern VALUE = Pattern.compile("value (\\d{1,15})");
  private static final Pattern ROUND = Pattern.compile("round (\\d{1,6})");

  private ActText() {}

  static String ofValue(long number) {
    return "value " + number;
  }

  static String ofRound(int round) {
    return "round " + round;
  }

  /** The number of the value; empty where the act names none. */
  static OptionalLong valueNumber(Act act) {
    Matcher match = match(VALUE, act);
    return match.matches() ? OptionalLong.of(Long.parseLong(match.group(1))) : OptionalLong.empty();
  }

  static OptionalInt round(Act act) {
    Matcher match = match(ROUND, act);
    return match.matches() ? OptionalInt.of(Integer.parseInt(match.group(1))) : OptionalInt.empty();
  }

  private static Matcher match(Pattern pattern, Act act) {
    return pattern.matcher(act.text() == null ? "" : act.text());
  }
}
