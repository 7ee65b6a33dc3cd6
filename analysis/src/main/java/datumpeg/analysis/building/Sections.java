package datumpeg.analysis.building;

import java.util.OptionalDouble;

/**
 * The sizes of the steel that the set-out depends on. All lengths in metres.
 *
 * @param columnDepthMetres across the building
 * @param columnWidthMetres along the building
 * @param edgeToGirtFaceMetres from the slab's side edge in to the outer face of the girts
 * @param kneeGapMetres between a rafter's end and the column's inner face, each side
 * @param rafterLengthMetres along the rafter from apex to end, if the drawing gives it
 * @param tipDistanceMetres between the outermost points of a rafter pair, if the drawing gives it
 * @param columnStraightnessMetres greatest bow of a column; empty means height/1000
 */
public record Sections(
    double columnDepthMetres,
    double columnWidthMetres,
    double sideGirtDepthMetres,
    double endGirtDepthMetres,
    double rafterDepthMetres,
    Girts girts,
    double edgeToGirtFaceMetres,
    double kneeGapMetres,
    RafterEnd rafterEnd,
    OptionalDouble rafterLengthMetres,
    OptionalDouble tipDistanceMetres,
    OptionalDouble claddingThicknessMetres,
    OptionalDouble sheetCoverMetres,
    OptionalDouble columnStraightnessMetres) {

  /** From the slab's side edge in to the outer face of the columns. */
  public double outerFaceOffsetMetres() {
    return edgeToGirtFaceMetres + (girts == Girts.OUTSIDE ? sideGirtDepthMetres : 0);
  }

  /** From the slab's side edge in to the column line, the inner face of the columns. */
  public double columnLineOffsetMetres() {
    return outerFaceOffsetMetres() + columnDepthMetres;
  }
}
