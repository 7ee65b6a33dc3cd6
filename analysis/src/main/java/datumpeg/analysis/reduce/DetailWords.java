package datumpeg.analysis.reduce;

import datumpeg.analysis.check.slab.SlabFlatness;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Movability;
import datumpeg.analysis.remedy.Plumbing;

/** What is wrong, and what to do, for the checks of wall frames on the slab and of details. */
final class DetailWords {
  private DetailWords() {}

  /** What is wrong, as the rest of a sentence. */
  static String sentence(Outcome outcome) {
    String target = outcome.target();
    String amount = Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    boolean plus = outcome.deviation() > 0;
    return switch (outcome.check()) {
      case "wall-square" ->
          "wall frame "
              + target
              + " is racked by "
              + amount
              + " toward "
              + end(plus)
              + " at the eave.";
      case "foot-line" ->
          "foot " + target + " lies " + amount + (plus ? " beyond" : " short of") + " the string.";
      case "line-straight" ->
          "line mark "
              + target.substring("line.".length())
              + " lies "
              + amount
              + outward(plus)
              + ".";
      case "base-straight" -> "base " + target + " stands " + amount + outward(plus) + ".";
      case "anchor-edge" ->
          target.endsWith("/mark")
              ? "anchors " + target + " are off their place by " + amount + "."
              : "the outermost anchor of "
                  + target
                  + " is nearer to the edge by "
                  + amount
                  + " than the project allows.";
      case "slab-flatness" -> SlabFlatness.sentence(outcome);
      case "mullion-plumb" ->
          "mullion " + target + " leans " + amount + " toward " + towards(outcome) + ".";
      case "mullion-spacing" ->
          "mullions " + target + " are " + amount + (plus ? " too far apart." : " too close.");
      case "opening" -> "opening " + target + " is off by " + amount + opening(outcome) + ".";
      case "eave-level" -> "the eaves spread over " + amount + " (" + outcome.aside() + ").";
      case "roof-square" ->
          "roof bay "
              + target
              + " is out of square: its diagonals differ by "
              + amount
              + ", the ridge is toward "
              + end(plus)
              + ".";
      case "gutter-fall" ->
          "gutter "
              + target
              + " is "
              + amount
              + (plus ? " too high" : " too low")
              + " for its fall.";
      case "sheet-run" ->
          target.endsWith("/skew")
              ? "the sheets run skew: after "
                  + target
                  + " the ridge is "
                  + amount
                  + (plus ? " ahead." : " behind.")
              : "the sheets run "
                  + (plus ? "long" : "short")
                  + " by "
                  + amount
                  + " at "
                  + target
                  + ".";
      default -> outcome.check() + " " + target + " is off by " + amount + ".";
    };
  }

  /** What to do about it while it can be done, else whom to ask. */
  static String remedy(Outcome outcome, Movability movability) {
    String amount = Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    boolean plus = outcome.deviation() > 0;
    return switch (outcome.check()) {
      case "wall-square" -> rack(outcome, amount, plus);
      case "foot-line" ->
          "Move foot "
              + outcome.target()
              + " by "
              + amount
              + (plus ? " toward" : " away from")
              + " the eave, and read the diagonals again.";
      case "line-straight" ->
          "Snap the line again from end to end; mark "
              + outcome.target()
              + " moves "
              + amount
              + (plus ? " inward." : " outward.");
      case "base-straight" ->
          movability.bases()
              ? "Move base " + outcome.target() + " " + amount + (plus ? " inward." : " outward.")
              : asks(
                  "move base " + outcome.target() + " " + amount + (plus ? " inward" : " outward"));
      case "anchor-edge" ->
          outcome.target().endsWith("/mark")
              ? "Mark the anchors again from the line mark before drilling."
              : "Do not drill: too near to the edge. Ask the engineer; the anchor maker's approval and"
                  + " the drawings decide.";
      case "mullion-plumb" -> "Bring its top " + amount + " back toward " + back(outcome) + ".";
      case "mullion-spacing" ->
          (plus ? "Bring them together by " : "Bring them apart by ") + amount + ".";
      case "opening" ->
          opening(outcome).isEmpty()
              ? "Set the opening's posts and head again before they are fixed: " + amount + "."
              : "Bring the head to the "
                  + (plus ? "left" : "right")
                  + " seen from outside: "
                  + amount
                  + " between the diagonals.";
      case "eave-level" ->
          movability.tops()
              ? "Check the packing under the bases of the low eaves and the knee bolts of the high"
                  + " ones."
              : asks("bring the eaves to one level");
      case "roof-square" ->
          "Square the bay with its bracing before sheeting: pull the ridge toward "
              + end(!plus)
              + ".";
      case "gutter-fall" ->
          (plus ? "Lower" : "Raise")
              + " the brackets at "
              + outcome.target()
              + " by "
              + amount
              + ".";
      case "sheet-run" ->
          "Take it up over the next sheets, within what the sheets' maker allows: " + amount + ".";
      default -> "Ask the engineer.";
    };
  }

  private static String rack(Outcome outcome, String amount, boolean plus) {
    return "Push the eave of wall frame "
        + outcome.target()
        + " toward "
        + end(!plus)
        + " by "
        + amount
        + (outcome.aside().contains("right when")
            ? " until both diagonals read " + outcome.aside().replaceFirst(".*read ", "") + "."
            : "; then read sides and diagonals again.");
  }

  private static String asks(String move) {
    return "Fixed by now: ask the engineer. It would take to " + move + ".";
  }

  private static String end(boolean n) {
    return n ? "end n" : "end 1";
  }

  private static String outward(boolean plus) {
    return plus
        ? " outward of the chord through the ends"
        : " inward of the chord through the ends";
  }

  private static String opening(Outcome outcome) {
    boolean plus = outcome.deviation() > 0;
    return outcome.target().endsWith("/diagonals")
        ? ", its head pushed to the " + (plus ? "right" : "left") + " seen from outside"
        : "";
  }

  private static Axis axis(Outcome outcome) {
    return outcome.target().endsWith("/along") ? Axis.ALONG : Axis.ACROSS;
  }

  private static String towards(Outcome outcome) {
    return Plumbing.towards(axis(outcome), outcome.deviation());
  }

  private static String back(Outcome outcome) {
    return Plumbing.towards(axis(outcome), -outcome.deviation());
  }
}
