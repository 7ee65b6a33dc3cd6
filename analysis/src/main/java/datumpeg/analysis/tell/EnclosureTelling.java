package datumpeg.analysis.tell;

import datumpeg.analysis.conform.DecidedAs;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Plumbing;
import java.util.List;
import java.util.Map;

/** What closes the building: posts, eaves, roof, gutters and sheets. */
final class EnclosureTelling implements Telling {
  @Override
  public Map<String, String> titles() {
    return Titles.of(
        "mullion-plumb", "Mullion plumb",
        "mullion-spacing", "Mullion spacing",
        "eave-level", "Eave level",
        "roof-square", "Roof square",
        "gutter-fall", "Gutter fall",
        "sheet-run", "Run of the sheets");
  }

  @Override
  public String place(String check, String target) {
    return switch (check) {
      case "mullion-plumb" -> Places.direction(target);
      case "mullion-spacing" -> mullions(target);
      case "eave-level" -> "highest less lowest";
      case "gutter-fall" -> TargetWords.pointNamed("gutter." + target);
      case "sheet-run" -> sheets(target);
      default -> Places.level(Places.range(target));
    };
  }

  /** The sheets of one side are one cause. */
  @Override
  public String cause(Outcome outcome, List<Outcome> all) {
    return outcome.check().equals("sheet-run")
        ? outcome.check() + " " + Places.before(outcome.target())
        : Telling.super.cause(outcome, all);
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
          "mullion "
              + Places.before(target)
              + " leans "
              + amount
              + " toward "
              + towards(outcome)
              + ".";
      case "mullion-spacing" ->
          "the posts "
              + mullions(target)
              + " are "
              + amount
              + (plus ? " too far apart." : " too close.");
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
          place("gutter-fall", target)
              + " is "
              + amount
              + (plus ? " too high" : " too low")
              + " for its fall.";
      case "sheet-run" ->
          target.endsWith("/skew")
              ? "the sheets run skew: "
                  + sheets(target.replaceFirst("/skew$", ""))
                  + " the ridge is "
                  + amount
                  + (plus ? " ahead." : " behind.")
              : "the sheets run "
                  + (plus ? "long" : "short")
                  + " by "
                  + amount
                  + " "
                  + sheets(target)
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
              + " the brackets of "
              + place("gutter-fall", outcome.target())
              + " by "
              + amount
              + ".";
      case "sheet-run" ->
          "Take it up over the next sheets, within what the sheets' maker allows: " + amount + ".";
      default -> throw Telling.notHere(outcome);
    };
  }

  /** 1/A-M1 as a person says it: A to M1 at frame 1. */
  private static String mullions(String target) {
    return target.replaceFirst("^(\\d+)/([^-]+)-(.+)$", "$2 to $3 at frame $1");
  }

  /** A/10/eave as a person says it: after 10 sheets on side A, at the eave. */
  private static String sheets(String target) {
    return target
        .replaceFirst("^([AB])/(\\d+)", "after $2 sheets on side $1")
        .replaceFirst("/skew$", ", ridge less eave")
        .replaceFirst("/(.+)$", " at the $1");
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
