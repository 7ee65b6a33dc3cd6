/**
 * What is fixed to the frames and the slab, as the drawing gives it: end-wall posts, anchors,
 * gutters, and where the slab's flatness is read.
 *
 * <p>Here: sizes and places as plain numbers in metres. Not here: where these stand in the plan and
 * what follows from that (room building), readings. Worked: brackets along 18 m of gutter at most 1
 * m apart are 19. Read {@link datumpeg.analysis.detail.Details} first.
 */
@NullMarked
package datumpeg.analysis.detail;

import org.jspecify.annotations.NullMarked;
