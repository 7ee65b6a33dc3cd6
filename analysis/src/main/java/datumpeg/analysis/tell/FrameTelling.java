package datumpeg.analysis.tell;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Plumbing;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Plumb, spacing and clear span of the frames that stand. */
final class FrameTelling implements Telling {
  @Override
  public Map<String, String> titles() {
    return Titles.of(
        "column-plumb", "Column plumb",
        "portal-plumb", "Portal frame plumb",
        "frame-spacing", "Frame spacing",
        "spacing-match", "Spacing at the eave less at the base",
        "overall-length", "Overall length",
        "clear-span", "Clear span");
  }

  @Override
  public String place(String check, String target) {
    return switch (check) {
      case "column-plumb" -> Places.direction(target);
      case "portal-plumb" -> "frame " + Places.direction(target) + ", mean of its columns";
      case "overall-length" -> "wall " + target;
      case "clear-span" -> "frame " + Places.level(target);
      default -> Places.level(Places.range(target));
    };
  }

  @Override
  public String cause(Outcome outcome, List<Outcome> all) {
    return switch (outcome.check()) {
      case "column-plumb" -> "column " + columnOf(outcome);
      case "portal-plumb" -> portalKey(outcome.target(), all);
      case "frame-spacing", "spacing-match" -> spacingKey(outcome, all);
      case "overall-length" -> "spacing " + outcome.target();
      default -> Telling.super.cause(outcome, all);
    };
  }

  @Override
  public String meterCheck(String check) {
    return switch (check) {
      case "column-plumb", "portal-plumb" -> Moves.TURN_THE_METER;
      default -> Telling.super.meterCheck(check);
    };
  }

  @Override
  public boolean movesUnseen(Outcome outcome) {
    return outcome.check().equals("portal-plumb");
  }

  @Override
  public String action(Outcome worst, List<Outcome> all, Situation situation) {
    return worst.check().equals("frame-spacing")
        ? new RowShift(situation).words(worst, all)
        : worst.remedy();
  }

  @Override
  public String sentence(Outcome outcome, List<Outcome> all) {
    String target = outcome.target();
    String amount = Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    boolean plus = outcome.deviation() > 0;
    return switch (outcome.check()) {
      case "column-plumb" ->
          "column "
              + target.substring(0, target.indexOf('/'))
              + " leans "
              + amount
              + " toward "
              + Plumbing.towards(
                  target.endsWith("/along") ? Axis.ALONG : Axis.ACROSS, outcome.deviation())
              + " over its height.";
      case "portal-plumb" ->
          "portal "
              + target.substring(0, target.indexOf('/'))
              + " leans "
              + amount
              + " toward "
              + Plumbing.towards(Axis.ACROSS, outcome.deviation())
              + " on average.";
      case "frame-spacing" ->
          "bay " + Places.bay(target) + " is " + amount + (plus ? " too long." : " too short.");
      case "spacing-match" ->
          "bay "
              + target
              + " is "
              + amount
              + (plus ? " wider" : " narrower")
              + " at the eave than at the base.";
      case "overall-length" ->
          "side "
              + target
              + " is "
              + amount
              + (plus ? " too long" : " too short")
              + " between its end faces.";
      case "clear-span" ->
          "the clear span of "
              + place("clear-span", target)
              + " is "
              + amount
              + (plus ? " too wide." : " too narrow.");
      default -> throw Telling.notHere(outcome);
    };
  }

  @Override
  public String remedy(Outcome outcome, Situation situation) {
    return switch (outcome.check()) {
      case "column-plumb" -> plumb(outcome, situation);
      case "portal-plumb" -> "Bring its columns upright, the worse one first.";
      case "clear-span" -> Moves.across(outcome, situation);
      default -> Moves.along(outcome, situation);
    };
  }

  private static String plumb(Outcome outcome, Situation situation) {
    int slash = outcome.target().indexOf('/');
    Axis axis = outcome.target().endsWith("/along") ? Axis.ALONG : Axis.ACROSS;
    return Plumbing.remedy(
        outcome,
        outcome.target().substring(0, slash),
        axis,
        situation.movability(),
        situation.setOut().building().columnHeightMetres(),
        situation.props());
  }

  /**
   * A bay that is off only aloft belongs to the worst open column that bounds it, if it has one.
   */
  private static String spacingKey(Outcome bay, List<Outcome> all) {
    String frames = Places.before(bay.target());
    String side = "spacing " + bay.target().charAt(0);
    boolean aloft = bay.check().equals("spacing-match") || bay.target().endsWith("/eave");
    boolean offBelow =
        all.stream()
            .filter(outcome -> outcome.target().equals(frames + "/base"))
            .anyMatch(Severity::isOpen);
    if (!aloft || offBelow) {
      return side;
    }
    List<String> columns = List.of(frames.split("-"));
    return all.stream()
        .filter(outcome -> outcome.check().equals("column-plumb"))
        .filter(outcome -> outcome.target().endsWith("/along") && Severity.isOpen(outcome))
        .filter(outcome -> columns.contains(columnOf(outcome)))
        .max(Comparator.comparingDouble(Severity::of))
        .map(outcome -> "column " + columnOf(outcome))
        .orElse(side);
  }

  private static String columnOf(Outcome plumb) {
    return plumb.target().substring(0, plumb.target().indexOf('/'));
  }

  /** A portal's mean lean belongs to its worst open column, if it has one. */
  private static String portalKey(String target, List<Outcome> all) {
    String number = target.substring(0, target.indexOf('/'));
    return all.stream()
        .filter(outcome -> outcome.check().equals("column-plumb"))
        .filter(outcome -> outcome.target().substring(1).equals(number + "/across"))
        .filter(Severity::isOpen)
        .max(Comparator.comparingDouble(Severity::of))
        .map(column -> "column " + column.target().substring(0, column.target().indexOf('/')))
        .orElse("portal " + number);
  }
}
