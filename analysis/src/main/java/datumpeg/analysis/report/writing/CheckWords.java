package datumpeg.analysis.report.writing;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.tell.Tellings;
import java.util.Optional;

/** Checks, targets and verdicts in the words of the trade. */
public final class CheckWords {
  private CheckWords() {}

  /** What is checked; a check without words of its own is told by its name. */
  public static String check(String check) {
    return Tellings.title(check);
  }

  /** What it was checked of: "corner A1", "column A3, across", "A1 to A2 at the base". */
  public static String target(String check, String target) {
    return Tellings.place(check, target);
  }

  /** Check and target in one phrase. */
  public static String phrase(Outcome outcome) {
    return check(outcome.check()) + ", " + target(outcome.check(), outcome.target());
  }

  /** A verdict as a word; without limits there is none. */
  public static String verdict(Optional<Verdict> verdict) {
    return verdict.map(Verdict::text).orElse("no limit given");
  }
}
