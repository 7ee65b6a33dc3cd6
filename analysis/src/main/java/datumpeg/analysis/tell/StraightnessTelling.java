package datumpeg.analysis.tell;

import datumpeg.analysis.check.StraightLine;
import datumpeg.analysis.conform.DecidedAs;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.remedy.Millimetres;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How straight rows of marks, bases and slab edges are. */
final class StraightnessTelling implements Telling {
  @Override
  public Map<String, String> titles() {
    return Titles.of(StraightLine.CHECK, "Straightness of a row");
  }

  @Override
  public String place(String check, String target) {
    return row(target) + ", off " + line(target);
  }

  /** Both lines of one row, and its points. */
  @Override
  public String cause(Outcome outcome, List<Outcome> all) {
    return StraightLine.CHECK + " " + Places.before(outcome.target());
  }

  /**
   * The cause of a row of which a point is part, if the row is found out of line.
   *
   * @param point such as line.A2
   */
  static Optional<String> rowOf(String point, List<Outcome> all) {
    String row = point.replaceFirst("\\d+$", "");
    return all.stream()
            .filter(outcome -> outcome.check().equals(StraightLine.CHECK))
            .filter(outcome -> Places.before(outcome.target()).equals(row))
            .anyMatch(Severity::isOpen)
        ? Optional.of(StraightLine.CHECK + " " + row)
        : Optional.empty();
  }

  @Override
  public DecidedAs decidedAs(String check) {
    return DecidedAs.MAXIMUM;
  }

  @Override
  public boolean movesUnseen(Outcome outcome) {
    return isConcrete(outcome.target());
  }

  @Override
  public String sentence(Outcome outcome, List<Outcome> all) {
    return row(outcome.target())
        + (isConcrete(outcome.target()) ? " is " : " are ")
        + "up to "
        + Millimetres.with(outcome.deviation(), outcome.expandedUncertainty())
        + " off "
        + line(outcome.target())
        + " ("
        + outcome.aside()
        + ").";
  }

  @Override
  public String remedy(Outcome outcome, Situation situation) {
    String target = outcome.target();
    if (isConcrete(target)) {
      return "Concrete does not move: set the column line by its own string, not along this edge."
          + " Ask the engineer where an anchor comes nearer to the edge than the project allows.";
    }
    String moves = "what is + inward, what is − outward, worst first (" + outcome.aside() + ")";
    if (target.startsWith("line.")) {
      return "Snap the line again from end to end; marks move: " + moves + ".";
    }
    return situation.movability().bases()
        ? "Move the bases: " + moves + "; then read the row again."
        : Moves.asks("move the bases: " + moves);
  }

  private static boolean isConcrete(String target) {
    return target.startsWith("edge.") || target.startsWith("slab.");
  }

  /** line.A, base.A, edge.A or slab.A1-A4 as a person says it. */
  private static String row(String target) {
    String[] parts = Places.before(target).split("\\.", 2);
    return switch (parts[0]) {
      case "line" -> "the line marks of side " + parts[1];
      case "base" -> "the bases of side " + parts[1];
      case "edge" -> "the slab's edge on side " + parts[1];
      default -> "the slab's edge " + Places.range(parts[1]);
    };
  }

  private static String line(String target) {
    return target.endsWith("/best") ? "the line that fits best" : "the line through the ends";
  }
}
