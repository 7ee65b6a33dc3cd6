package datumpeg.desktop.findings;

import datumpeg.analysis.reduce.Cause;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What is likely moved when a cause is dealt with, by the outcomes it shows in. */
final class CauseThings {
  private static final Pattern MARK = Pattern.compile("([A-Z]\\d+)(?:/.*)?");
  private static final Pattern MARKS = Pattern.compile("([A-Z]\\d+)-([A-Z]\\d+)(?:/.*)?");
  private static final Pattern FRAME = Pattern.compile("(?:\\d+-)?(\\d+)(?:/.*)?");

  private CauseThings() {}

  /** Things as {@code moved} names them, the likeliest first; empty where none can be told. */
  static List<String> of(Cause cause) {
    Set<String> things = new LinkedHashSet<>();
    for (String symptom : cause.symptoms()) {
      int space = symptom.indexOf(' ');
      if (space > 0) {
        add(symptom.substring(0, space), symptom.substring(space + 1), things);
      }
    }
    return things.stream().sorted(Comparator.comparing(thing -> !isNamed(thing, cause))).toList();
  }

  /** Whether what is to be done names it: then that is what was moved. */
  private static boolean isNamed(String thing, Cause cause) {
    String mark = thing.substring(thing.indexOf('.') + 1);
    return Pattern.compile("\\b" + Pattern.quote(mark) + "\\b(?!-)").matcher(cause.action()).find();
  }

  private static void add(String check, String target, Set<String> things) {
    if (check.startsWith("slab-") || check.equals("seat-level") || check.equals("straightness")) {
      return; // concrete is not moved; what is packed, or out of a row, is for the person to say
    }
    if (check.equals("wall-square") || check.equals("foot-line")) {
      things.add("wall." + target.charAt(0));
      return;
    }
    Matcher marks = MARKS.matcher(target);
    Matcher mark = MARK.matcher(target);
    Matcher frame = FRAME.matcher(target);
    if (target.startsWith("line.")) {
      things.add(target);
    } else if (marks.matches()) {
      things.add("column." + marks.group(2));
      things.add("column." + marks.group(1));
    } else if (mark.matches()) {
      things.add("column." + mark.group(1));
    } else if (frame.matches()) {
      things.add("portal." + frame.group(1));
    }
  }
}
