package datumpeg.analysis.reduce;

import datumpeg.analysis.building.PropGeometry;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.slab.SlabFlatness;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Movability;
import datumpeg.analysis.remedy.Plumbing;
import datumpeg.analysis.remedy.Racking;
import datumpeg.analysis.remedy.RafterTips;
import java.util.Optional;

/**
 * What to move about an outcome that is out of its limits: one case a check. A check without a case
 * goes to the engineer.
 */
final class Moves {
  private final Movability movability;
  private final SetOut setOut;
  private final Optional<PropGeometry> props;

  Moves(Movability movability, Job job) {
    this.movability = movability;
    this.setOut = job.setOut();
    this.props = job.props();
  }

  /** The remedy; "leave it" where the move is smaller than what the meter can see. */
  String words(Outcome outcome) {
    boolean seen = Math.abs(outcome.deviation()) > outcome.expandedUncertainty();
    return switch (outcome.check()) {
      case "slab-size", "slab-square", "slab-diagonals" ->
          "Concrete does not move: set the lines square by their own diagonals, not from this edge.";
      case "slab-level", "slab-level-point" ->
          "Pack the bases to one level; ask the engineer where a point is beyond packing.";
      case "seat-level" -> "Pack the bases to one level.";
      case SlabFlatness.CHECK -> SlabFlatness.remedy(outcome);
      case "portal-plumb" -> "Bring its columns upright, the worse one first.";
      default -> seen ? move(outcome) : leaveIt(outcome);
    };
  }

  private String move(Outcome outcome) {
    return switch (outcome.check()) {
      case "column-plumb" -> plumb(outcome);
      case "clear-span", "line-parallel" -> across(outcome);
      case "rafter-pair" -> RafterTips.remedy(outcome, setOut, movability);
      case "wall-square" -> Racking.remedy(outcome, setOut, movability);
      case "frame-spacing", "spacing-match", "overall-length" -> along(outcome);
      default -> DetailWords.remedy(outcome, movability);
    };
  }

  private static String leaveIt(Outcome outcome) {
    return "Leave it: the move would be "
        + Millimetres.of(outcome.deviation())
        + ", less than the "
        + Millimetres.of(outcome.expandedUncertainty())
        + " the meter can see. Ask who set the limit.";
  }

  private String plumb(Outcome outcome) {
    int slash = outcome.target().indexOf('/');
    Axis axis = outcome.target().endsWith("/along") ? Axis.ALONG : Axis.ACROSS;
    return Plumbing.remedy(
        outcome,
        outcome.target().substring(0, slash),
        axis,
        movability,
        setOut.building().columnHeightMetres(),
        props);
  }

  private String across(Outcome outcome) {
    boolean movable = outcome.target().endsWith("/eave") ? movability.tops() : movability.bases();
    String move =
        (outcome.deviation() > 0
                ? "Bring the two sides together by "
                : "Bring the two sides apart by ")
            + Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    return Movability.said(move, movable);
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
    return Movability.said(move, movable);
  }
}
