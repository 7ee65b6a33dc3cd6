package datumpeg.analysis.building;

/**
 * An opening in a wall, for a door or a window.
 *
 * @param fromMetres along the wall, from its A or 1 end, to the near side of the opening
 * @param widthMetres clear width
 * @param heightMetres top of slab to the underside of the head
 */
public record Opening(
    String id, Wall wall, double fromMetres, double widthMetres, double heightMetres) {

  /**
   * Width of an opening for a rolling curtain: curtain − 2 · track (common practice, no source).
   */
  public static double widthForCurtainMetres(double curtainMetres, double trackMetres) {
    return curtainMetres - 2 * trackMetres;
  }

  /** Along the wall, from its A or 1 end, to the far side of the opening. */
  public double toMetres() {
    return fromMetres + widthMetres;
  }
}
