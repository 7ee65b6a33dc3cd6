package datumpeg.bridge.cli;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.reduce.Findings;
import java.util.List;
import java.util.function.Predicate;

/**
 * A job's plan in a few lines of text: every column, bay and slab corner with its worst verdict.
 */
final class DemoPlan {
  /** What the signs of {@link #lines()} mean. */
  static final String LEGEND =
      "o within limits  X out  ? too close to call  ! readings disagree  . not measured";

  private static final int BAY_WIDTH = 9;

  private final SetOut setOut;
  private final List<Outcome> outcomes;

  DemoPlan(SetOut setOut, Findings findings) {
    this.setOut = setOut;
    this.outcomes = findings.stages().stream().flatMap(stage -> stage.outcomes().stream()).toList();
  }

  /** Side B above side A, end 1 on the left. */
  List<String> lines() {
    int last = setOut.building().portalFrameCount();
    return List.of(side('B', last), side('A', last));
  }

  private String side(char side, int last) {
    return "  corner "
        + corner(side + "1")
        + "  "
        + wall(side, last)
        + "  "
        + corner(side + Integer.toString(last))
        + " corner";
  }

  private String wall(char side, int last) {
    StringBuilder text = new StringBuilder();
    for (int number = 1; number <= last; number++) {
      String mark = side + Integer.toString(number);
      text.append(mark).append(' ').append(worst(column(mark)));
      if (number < last) {
        text.append(bay(mark + "-" + side + (number + 1)));
      }
    }
    return text.toString();
  }

  private String bay(String bay) {
    char sign = worst(o -> o.check().equals("frame-spacing") && o.target().startsWith(bay + "/"));
    String half = "-".repeat((BAY_WIDTH - 1) / 2);
    return half + (sign == 'o' || sign == '.' ? "-" : sign) + half;
  }

  private static Predicate<Outcome> column(String mark) {
    return outcome ->
        outcome.check().equals("column-plumb") && outcome.target().startsWith(mark + "/");
  }

  private char corner(String mark) {
    return worst(o -> o.check().equals("slab-square") && o.target().equals(mark));
  }

  private char worst(Predicate<Outcome> wanted) {
    List<Outcome> found = outcomes.stream().filter(wanted).toList();
    if (found.stream().anyMatch(outcome -> outcome.is(Verdict.NONCONFORMING))) {
      return 'X';
    }
    if (found.stream().anyMatch(outcome -> outcome.is(Verdict.UNDECIDED))) {
      return '?';
    }
    return found.stream().anyMatch(outcome -> outcome.is(Verdict.CONFORMING)) ? 'o' : '.';
  }
}
