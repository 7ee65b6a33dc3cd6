package datumpeg.analysis.report.drawing;

import java.util.List;
import java.util.stream.Stream;

/** How a line or an area is drawn: black on white, told apart by weight and dashes. */
public enum Ink {
  /** As designed. */
  DESIGN("none", "0.9", ""),
  /** As found. */
  FOUND("none", "2.8", ""),
  /** A permitted deviation. */
  LIMIT("none", "1", "7 3"),
  /** The grid and other things to find one's way by. */
  GRID("none", "0.6", "1 3"),
  DIAGONAL("none", "0.9", "10 3 2 3"),
  /** Where a point may be, given the uncertainty. */
  UNCERTAINTY("none", "0.9", "2 2"),
  THIN("none", "0.8", ""),
  /** Filled black. */
  SOLID("#000", "1", ""),
  /** Filled grey with a black edge; never the only sign of anything. */
  GREY("#bbb", "1", ""),
  /** Filled white with a black edge. */
  PAPER("#fff", "1.4", ""),
  /** White without an edge, behind words. */
  BLANK("#fff", "0", "");

  private final String fill;
  private final String strokeWidth;
  private final String dashes;

  Ink(String fill, String strokeWidth, String dashes) {
    this.fill = fill;
    this.strokeWidth = strokeWidth;
    this.dashes = dashes;
  }

  /** Whether its area is filled with the colour of the lines, half of it, or that of the paper. */
  public Fill fill() {
    return switch (this) {
      case SOLID -> Fill.FULL;
      case GREY -> Fill.HALF;
      case PAPER, BLANK -> Fill.PAPER;
      case DESIGN, FOUND, LIMIT, GRID, DIAGONAL, UNCERTAINTY, THIN -> Fill.NONE;
    };
  }

  /** How thick its lines are, in drawing units; 0 for none. */
  public double width() {
    return Double.parseDouble(strokeWidth);
  }

  /** Its dashes and gaps in turn, in drawing units; empty for a line without gaps. */
  public List<Double> dashLengths() {
    return dashes.isEmpty()
        ? List.of()
        : Stream.of(dashes.split(" ", -1)).map(Double::valueOf).toList();
  }

  /** What an area is filled with. */
  public enum Fill {
    NONE,
    FULL,
    HALF,
    PAPER
  }

  List<String> attributes() {
    String stroke = strokeWidth.equals("0") ? "none" : "#000";
    return dashes.isEmpty()
        ? List.of("fill", fill, "stroke", stroke, "stroke-width", strokeWidth)
        : List.of(
            "fill",
            fill,
            "stroke",
            stroke,
            "stroke-width",
            strokeWidth,
            "stroke-dasharray",
            dashes);
  }
}
