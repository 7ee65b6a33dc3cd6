package datumpeg.analysis.adjust;

import java.util.List;

/**
 * Points that the distances would place just as well mirrored over the line through two others.
 * They stand where the approximate coordinates put them; their mirror image is near enough to be
 * mistaken.
 *
 * @param points that may be mirrored, together
 * @param hinge the two points the line runs through
 * @param apartMetres largest distance between a point and its mirror image
 */
public record MirrorAmbiguity(List<String> points, PointPair hinge, double apartMetres) {
  public MirrorAmbiguity {
    points = List.copyOf(points);
  }
}
