package datumpeg.analysis.tell;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Movability;
import datumpeg.analysis.remedy.Racking;
import datumpeg.analysis.remedy.RafterTips;
import java.util.List;
import java.util.Map;

/** Lines, anchors, rafter pairs and wall frames before they stand, and bases in line. */
final class LayingTelling implements Telling {
  @Override
  public Map<String, String> titles() {
    return Titles.of(
        "line-parallel", "Column lines parallel",
        "line-straight", "Column line straight",
        "anchor-edge", "Anchor to the slab's edge",
        "rafter-pair", "Tip distance of the rafter pair",
        "wall-square", "Rack of the wall frame",
        "foot-line", "Foot on the line",
        "base-straight", "Bases in line");
  }

  @Override
  public String place(String check, String target) {
    return switch (check) {
      case "rafter-pair" -> "frame " + target;
      case "wall-square" -> "wall " + target;
      case "line-straight" -> TargetWords.pointNamed(target);
      case "foot-line", "base-straight" -> "base " + target;
      case "anchor-edge" -> anchors(target);
      default -> Places.level(Places.range(target));
    };
  }

  /** A point out of a row that is out of line belongs to the row. */
  @Override
  public String cause(Outcome outcome, List<Outcome> all) {
    String own = Telling.super.cause(outcome, all);
    return switch (outcome.check()) {
      case "line-straight" -> StraightnessTelling.rowOf(outcome.target(), all).orElse(own);
      case "base-straight" ->
          StraightnessTelling.rowOf("base." + outcome.target(), all).orElse(own);
      default -> own;
    };
  }

  @Override
  public String sentence(Outcome outcome, List<Outcome> all) {
    String target = outcome.target();
    String amount = Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    boolean plus = outcome.deviation() > 0;
    return switch (outcome.check()) {
      case "rafter-pair" ->
          "rafter pair "
              + target
              + " is "
              + amount
              + (plus ? " too wide" : " too narrow")
              + " between its tips.";
      case "line-parallel" ->
          "the column lines " + (plus ? "spread" : "close") + " by " + amount + " toward end n.";
      case "wall-square" ->
          "wall frame "
              + target
              + " is racked by "
              + amount
              + " toward "
              + Places.end(plus)
              + " at the eave.";
      case "foot-line" ->
          "foot " + target + " lies " + amount + (plus ? " beyond" : " short of") + " the string.";
      case "line-straight" ->
          TargetWords.pointNamed(target) + " lies " + amount + outward(plus) + ".";
      case "base-straight" -> "base " + target + " stands " + amount + outward(plus) + ".";
      case "anchor-edge" ->
          target.endsWith("/mark")
              ? "the anchors of base "
                  + Places.before(target)
                  + " are "
                  + amount
                  + (plus ? " further from" : " nearer to")
                  + " their line mark than planned."
              : "the outermost anchor of base "
                  + Places.before(target)
                  + " is nearer to the slab's "
                  + (target.endsWith("/end") ? "end edge" : "edge")
                  + " by "
                  + amount
                  + " than the project allows.";
      default -> throw Telling.notHere(outcome);
    };
  }

  @Override
  public String remedy(Outcome outcome, Situation situation) {
    String amount = Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    boolean plus = outcome.deviation() > 0;
    return switch (outcome.check()) {
      case "line-parallel" ->
          Movability.said(
              "Bring the line marks at end n "
                  + amount
                  + (plus ? " closer together" : " further apart")
                  + ", then read both ends and the diagonals again",
              situation.movability().bases());
      case "rafter-pair" -> RafterTips.remedy(outcome, situation.setOut(), situation.movability());
      case "wall-square" -> Racking.remedy(outcome, situation.setOut(), situation.movability());
      case "foot-line" ->
          "Move foot "
              + outcome.target()
              + " by "
              + amount
              + (plus ? " toward" : " away from")
              + " the eave, and read the diagonals again.";
      case "line-straight" ->
          "Snap the line again from end to end; "
              + TargetWords.pointNamed(outcome.target())
              + " moves "
              + amount
              + (plus ? " inward." : " outward.");
      case "base-straight" ->
          situation.movability().bases()
              ? "Move base " + outcome.target() + " " + amount + (plus ? " inward." : " outward.")
              : Moves.asks(
                  "move base " + outcome.target() + " " + amount + (plus ? " inward" : " outward"));
      case "anchor-edge" ->
          outcome.target().endsWith("/mark")
              ? "Mark the anchors again from the line mark before drilling."
              : "Do not drill: too near to the edge. Ask the engineer; the anchor maker's approval and"
                  + " the drawings decide.";
      default -> throw Telling.notHere(outcome);
    };
  }

  private static String anchors(String target) {
    String base = "base " + Places.before(target);
    return switch (target.substring(Places.before(target).length())) {
      case "/mark" -> base + ", against its line mark";
      case "/end" -> base + ", at the slab's end";
      default -> base;
    };
  }

  private static String outward(boolean plus) {
    return plus
        ? " outward of the chord through the ends"
        : " inward of the chord through the ends";
  }
}
