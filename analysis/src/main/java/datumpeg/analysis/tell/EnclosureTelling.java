package datumpeg.analysis.tell;

import datumpeg.analysis.conform.DecidedAs;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Plumbing;
import java.util.List;
import java.util.Map;

/** What closes the building: posts, openings, eaves, roof, gutters and sheets. */
final class EnclosureTelling implements Telling {
  @Override
  public Map<String, String> titles() {
    return Titles.of(
        "mullion-plumb", "Mullion plumb",
        "mullion-spacing", "Mullion spacing",
        "opening", "Opening",
        "eave-level", "Eave level",
        "roof-square", "Roof square",
        "gutter-fall", "Gutter fall",
        "sheet-run", "Run of the sheets");
  }

  @Override
  public String cause(Outcome outcome, List<Outcome> all) {
    return switch (outcome.check()) {
      case "opening", "sheet-run" -> outcome.check() + " " + outcome.target().split("/", 2)[0];
      default -> Telling.super.cause(outcome, all);
    };
  }

  @Override
  public DecidedAs decidedAs(String check) {
    return check.equals("eave-level") ? DecidedAs.SPREAD : DecidedAs.VALUE;
  }

  @Override
  public String meterCheck(String check) {
    return switch (check) {
      case "mullion-plumb" -> Moves.TURN_THE_METER;
      case "eave-level", "gutter-fall" -> Moves.LEVEL_AGAIN;
      default -> Telling.super.meterCheck(check);
    };
  }

  @Override
  public String sentence(Outcome outcome, List<Outcome> all) {
    String target = outcome.target();
    String amount = Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    boolean plus = outcome.deviation() > 0;
    return switch (outcome.check()) {
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
              + Places.end(plus)
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
      default -> throw Telling.notHere(outcome);
    };
  }

  @Override
  public String remedy(Outcome outcome, Situation situation) {
    String amount = Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    boolean plus = outcome.deviation() > 0;
    return switch (outcome.check()) {
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
          situation.movability().tops()
              ? "Check the packing under the bases of the low eaves and the knee bolts of the high"
                  + " ones."
              : Moves.asks("bring the eaves to one level");
      case "roof-square" ->
          "Square the bay with its bracing before sheeting: pull the ridge toward "
              + Places.end(!plus)
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
      default -> throw Telling.notHere(outcome);
    };
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
