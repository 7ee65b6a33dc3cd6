package datumpeg.analysis.tell;

import datumpeg.analysis.conform.Outcome;
import java.util.Set;

/**
 * A lean by more than a column is high: no distance to push anything by, but a reading to look at.
 * Its millimetres stand in the table.
 */
final class SteepLean {
  private static final Set<String> PLUMB = Set.of("column-plumb", "portal-plumb", "mullion-plumb");

  private SteepLean() {}

  static boolean is(Outcome outcome, Situation situation) {
    return isPlumb(outcome)
        && Math.abs(outcome.deviation()) > situation.setOut().building().columnHeightMetres();
  }

  /** Of an opening its posts alone lean. */
  private static boolean isPlumb(Outcome outcome) {
    return PLUMB.contains(outcome.check())
        || (outcome.check().equals("opening")
            && (outcome.target().endsWith("/along") || outcome.target().endsWith("/across")));
  }

  /** What is wrong, as the rest of a sentence. */
  static String sentence(Outcome outcome) {
    return Tellings.name(outcome)
        + ": read as leaning by more than a column is high, as nothing that stands does.";
  }
}
