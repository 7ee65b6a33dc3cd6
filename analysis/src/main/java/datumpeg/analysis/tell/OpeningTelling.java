package datumpeg.analysis.tell;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Plumbing;
import java.util.List;
import java.util.Map;

/** Size, squareness and posts of openings: D1/foot, D1/left, D1/diagonals, D1/left/along. */
final class OpeningTelling implements Telling {
  @Override
  public Map<String, String> titles() {
    return Titles.of("opening", "Opening");
  }

  @Override
  public String place(String check, String target) {
    String opening = Places.before(target);
    return opening
        + switch (part(target)) {
          case "foot" -> ", width at the foot";
          case "head" -> ", width at the head";
          case "left" -> ", height on the left";
          case "right" -> ", height on the right";
          case "diagonals" -> ", difference of its diagonals";
          default ->
              isLean(target) ? ", " + post(target) + ", " + direction(target) : ", " + part(target);
        };
  }

  /** One opening is one cause. */
  @Override
  public String cause(Outcome outcome, List<Outcome> all) {
    return outcome.check() + " " + Places.before(outcome.target());
  }

  @Override
  public String sentence(Outcome outcome, List<Outcome> all) {
    String target = outcome.target();
    String opening = "opening " + Places.before(target);
    String amount = Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    boolean plus = outcome.deviation() > 0;
    return switch (part(target)) {
      case "foot", "head" ->
          opening
              + " is "
              + amount
              + (plus ? " too wide" : " too narrow")
              + " at its "
              + part(target)
              + ".";
      case "left", "right" ->
          opening
              + " is "
              + amount
              + (plus ? " too high" : " too low")
              + " on the "
              + part(target)
              + ", seen from outside.";
      case "diagonals" ->
          opening
              + " is out of square by "
              + amount
              + ", its head pushed to the "
              + (plus ? "right" : "left")
              + " seen from outside.";
      default ->
          isLean(target)
              ? "the "
                  + post(target)
                  + " of "
                  + opening
                  + " leans "
                  + amount
                  + " "
                  + toward(outcome, 1)
              : opening + " is off by " + amount + ".";
    };
  }

  @Override
  public String remedy(Outcome outcome, Situation situation) {
    String target = outcome.target();
    String amount = Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    boolean plus = outcome.deviation() > 0;
    return switch (part(target)) {
      case "foot", "head" ->
          "Set its posts "
              + amount
              + (plus ? " closer together" : " further apart")
              + " at the "
              + part(target)
              + " before they are fixed.";
      case "left", "right" ->
          "Set its head "
              + amount
              + (plus ? " lower" : " higher")
              + " on the "
              + part(target)
              + " before it is fixed.";
      case "diagonals" ->
          "Bring the head to the "
              + (plus ? "left" : "right")
              + " seen from outside: "
              + amount
              + " between the diagonals.";
      default ->
          isLean(target)
              ? "Bring the top of the post " + amount + " back " + toward(outcome, -1)
              : "Set the opening's posts and head again before they are fixed: " + amount + ".";
    };
  }

  /** What follows the opening's name. */
  private static String part(String target) {
    String opening = Places.before(target);
    return target.length() > opening.length() ? target.substring(opening.length() + 1) : "";
  }

  private static boolean isLean(String target) {
    return target.endsWith("/along") || target.endsWith("/across");
  }

  private static String direction(String target) {
    return target.substring(target.lastIndexOf('/') + 1);
  }

  private static String post(String target) {
    return Places.before(part(target)) + " post";
  }

  private static String toward(Outcome outcome, int sign) {
    Axis axis = outcome.target().endsWith("/along") ? Axis.ALONG : Axis.ACROSS;
    return "toward " + Plumbing.towards(axis, sign * outcome.deviation()) + ".";
  }
}
