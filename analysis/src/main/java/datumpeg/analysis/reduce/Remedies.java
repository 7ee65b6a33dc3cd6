package datumpeg.analysis.reduce;

import datumpeg.analysis.conform.Conformance;
import datumpeg.analysis.conform.DecisionRule;
import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Movability;
import datumpeg.analysis.remedy.Plumbing;
import java.util.Set;

/** Puts to each outcome what to do about it at its stage. */
final class Remedies {
  /** No meter on a site gets an expanded uncertainty below this (common practice, no source). */
  private static final double LEAST_VISIBLE_METRES = 0.0002;

  /** More repeats than this nobody takes (common practice, no source). */
  private static final int MOST_REPEATS = 10;

  private static final Set<String> SPREADS = Set.of("slab-level", "seat-level");

  private final Movability movability;
  private final DecisionRule decision;

  Remedies(Movability movability, DecisionRule decision) {
    this.movability = movability;
    this.decision = decision;
  }

  Movability movability() {
    return movability;
  }

  /**
   * The outcome with its remedy; one that already has it, or needs none, is left as it is.
   *
   * @param ofRepeats what standard uncertainty endless repeats of every reading would leave
   */
  Outcome apply(Outcome outcome, double ofRepeats) {
    if (outcome.stale()) {
      return outcome.withRemedy("Something was moved since: measure it again.");
    }
    if (!outcome.remedy().isEmpty()) {
      return outcome;
    }
    if (outcome.is(Verdict.UNDECIDED)) {
      return outcome.withRemedy(whatWouldDecide(outcome, ofRepeats));
    }
    return outcome.is(Verdict.NONCONFORMING) ? outcome.withRemedy(words(outcome)) : outcome;
  }

  /**
   * What would decide a value like this one: so many readings where scatter limits, another meter
   * where the error limits that repeats cannot shrink.
   *
   * @param ofRepeats what standard uncertainty endless repeats would leave
   */
  String whatWouldDecide(Outcome outcome, double ofRepeats) {
    double needed = neededStandardUncertainty(outcome);
    double has = outcome.standardUncertainty();
    double coverage = outcome.coverage();
    String chance =
        " (now "
            + LengthDisplay.decimal(outcome.probability().orElse(0) * 100, 0)
            + " % sure that it conforms)";
    if (needed * coverage < LEAST_VISIBLE_METRES) {
      return "It sits on its limit"
          + chance
          + ": no measuring will tell. Ask who set the limit, or"
          + " bring it nearer to the plan.";
    }
    String from =
        " To tell, U must come down from "
            + Millimetres.of(has * coverage)
            + " to "
            + Millimetres.of(needed * coverage)
            + chance
            + ".";
    if (ofRepeats >= needed) {
      return "Repeats will not decide it: the error all readings of the meter share limits. Check that"
          + " error (turn the meter end for end, a known distance), or take a better meter."
          + from;
    }
    double readings =
        (has * has - ofRepeats * ofRepeats) / (needed * needed - ofRepeats * ofRepeats);
    if (!(readings <= MOST_REPEATS)) {
      return "Take a better meter: it would need more than " + MOST_REPEATS + " readings." + from;
    }
    int more = Math.max(1, (int) Math.ceil(readings) - 1);
    return "Read it " + (more == 1 ? "once more." : more + " times more.") + from;
  }

  private double neededStandardUncertainty(Outcome outcome) {
    Limits limits = outcome.limits().orElseThrow();
    return SPREADS.contains(outcome.check())
        ? Conformance.standardUncertaintyToDecideSpread(
            outcome.deviation(), limits.upper().orElseThrow(), outcome.coverage(), decision)
        : Conformance.standardUncertaintyToDecide(outcome.deviation(), limits, decision);
  }

  private String words(Outcome outcome) {
    return switch (outcome.check()) {
      case "column-plumb" -> plumb(outcome);
      case "portal-plumb" -> "Bring its columns upright, the worse one first.";
      case "slab-size", "slab-square", "slab-diagonals" ->
          "Concrete does not move: set the lines square by their own diagonals, not from this edge.";
      case "slab-level", "slab-level-point" ->
          "Pack the bases to one level; ask the engineer where a point is beyond packing.";
      case "seat-level" -> "Pack the bases to one level.";
      case "clear-span", "line-parallel" -> across(outcome);
      case "rafter-pair" -> rafterPair(outcome);
      case "frame-spacing", "spacing-match", "overall-length" -> along(outcome);
      default -> "Ask the engineer.";
    };
  }

  private String plumb(Outcome outcome) {
    int slash = outcome.target().indexOf('/');
    Axis axis = outcome.target().endsWith("/along") ? Axis.ALONG : Axis.ACROSS;
    return Plumbing.remedy(outcome, outcome.target().substring(0, slash), axis, movability);
  }

  private String across(Outcome outcome) {
    boolean movable = outcome.target().endsWith("/eave") ? movability.tops() : movability.bases();
    String move =
        (outcome.deviation() > 0
                ? "Bring the two sides together by "
                : "Bring the two sides apart by ")
            + Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    return movable ? move + "." : fixed(move);
  }

  private String rafterPair(Outcome outcome) {
    String move =
        (outcome.deviation() > 0 ? "Close the tips by " : "Open the tips by ")
            + Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    return movability.tops() ? move + "." : fixed(move);
  }

  private String along(Outcome outcome) {
    boolean aloft =
        outcome.target().endsWith("/eave")
            || outcome.target().endsWith("/apex")
            || outcome.check().equals("spacing-match");
    boolean movable = aloft ? movability.tops() : movability.bases();
    String move =
        (outcome.deviation() > 0 ? "Shorten bay " : "Lengthen bay ")
            + outcome.target().replaceFirst("/", " at the ")
            + " by "
            + Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    return movable ? move + "." : fixed(move);
  }

  private static String fixed(String move) {
    return "Fixed by now: ask the engineer. It would take to "
        + Character.toLowerCase(move.charAt(0))
        + move.substring(1)
        + ".";
  }
}
