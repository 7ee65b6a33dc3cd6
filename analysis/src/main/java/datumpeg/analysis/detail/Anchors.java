package datumpeg.analysis.detail;

/**
 * The anchors under one column, the same under each.
 *
 * @param edgeDistanceMetres least distance from an anchor's centre to the slab's edge, as the
 *     project gives it
 * @param acrossMetres between the outermost anchors of a base across the building; 0 for one row
 * @param alongMetres between the outermost anchors of a base along the building
 */
public record Anchors(double edgeDistanceMetres, double acrossMetres, double alongMetres) {
  /**
   * @throws IllegalArgumentException for an edge distance that is not positive, or a negative
   *     pattern
   */
  public Anchors {
    if (!(edgeDistanceMetres > 0) || !(acrossMetres >= 0) || !(alongMetres >= 0)) {
      throw new IllegalArgumentException(
          "Anchors have an edge distance of "
              + edgeDistanceMetres
              + " m and a pattern of "
              + acrossMetres
              + " m by "
              + alongMetres
              + " m; expected more than 0 and 0 or more.");
    }
  }
}
