package datumpeg.analysis.detail;

import java.util.OptionalDouble;

/**
 * An end-wall post.
 *
 * @param portalFrame the frame number of its end: 1 or n
 * @param id such as M1, counted from side A
 * @param fromSideAMetres from the slab's side edge A to its centre
 * @param heightMetres of its top above the slab; empty = up to the rafter
 */
public record Mullion(
    int portalFrame, String id, double fromSideAMetres, OptionalDouble heightMetres) {
  /** How its place is written in targets: {@code 1.M1}. */
  public String place() {
    return portalFrame + "." + id;
  }
}
