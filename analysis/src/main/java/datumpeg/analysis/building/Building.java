package datumpeg.analysis.building;

import java.util.List;

/**
 * The building as the drawing gives it. Lengths in metres, the pitch in radians.
 *
 * @param spanMetres slab edge to slab edge across the frames
 * @param lengthMetres slab edge to slab edge along the building
 * @param eaveHeightMetres top of slab to the inner knee
 * @param columnHeightMetres the height the plumb limit is a ratio of
 * @param endLineOffsetMetres from the slab's end edge in to the outer face of the end columns
 * @param baysMetres from end 1: first and last run from the end line to the centre of the next
 *     frame, the others centre to centre
 */
public record Building(
    double spanMetres,
    double lengthMetres,
    double eaveHeightMetres,
    double columnHeightMetres,
    Roof roof,
    double pitchRadians,
    double endLineOffsetMetres,
    List<Double> baysMetres,
    Sections sections) {

  private static final double SUM_TOLERANCE_METRES = 1e-6;

  /**
   * @throws IllegalArgumentException if a dimension is not positive, the bays do not sum to the
   *     length between the end lines, or nothing is left between the column lines
   */
  public Building {
    baysMetres = List.copyOf(baysMetres);
    requirePositive("span", spanMetres);
    requirePositive("length", lengthMetres);
    requirePositive("eave_height", eaveHeightMetres);
    requirePositive("column_height", columnHeightMetres);
    if (!(pitchRadians >= 0 && pitchRadians < StrictMath.PI / 2)) {
      throw new IllegalArgumentException(
          "pitch is "
              + LengthText.degrees(pitchRadians)
              + "; expected at least 0 and less than 90 deg.");
    }
    if (baysMetres.isEmpty()) {
      throw new IllegalArgumentException("bays is empty; expected at least one bay.");
    }
    double sum = baysMetres.stream().mapToDouble(Double::doubleValue).sum();
    double between = lengthMetres - 2 * endLineOffsetMetres;
    if (Math.abs(sum - between) > SUM_TOLERANCE_METRES) {
      throw new IllegalArgumentException(
          "The bays sum to "
              + LengthText.millimetres(sum)
              + ", but length − 2 · end_line_offset is "
              + LengthText.millimetres(between)
              + "; the two must agree.");
    }
    if (spanMetres - 2 * sections.columnLineOffsetMetres() <= 0) {
      throw new IllegalArgumentException(
          "The column lines stand "
              + LengthText.millimetres(sections.columnLineOffsetMetres())
              + " in from each side, which leaves no clear span in a span of "
              + LengthText.millimetres(spanMetres)
              + ".");
    }
  }

  private static void requirePositive(String key, double metres) {
    if (!(metres > 0) || !Double.isFinite(metres)) {
      throw new IllegalArgumentException(
          key + " is " + LengthText.millimetres(metres) + "; expected more than 0.");
    }
  }

  /** The number n of portal frames. */
  public int portalFrameCount() {
    return baysMetres.size() + 1;
  }

  /** The greatest bow a column may have by itself: as given, else height/1000. */
  public double columnStraightnessMetres() {
    return sections.columnStraightnessMetres().orElse(columnHeightMetres / 1000);
  }
}
