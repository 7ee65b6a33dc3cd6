/**
 * The checks of what is put together lying on the slab: rafter pairs and wall frames.
 *
 * <p>Here: one class a check. Not here: what stands (room check.frame). Read {@link
 * datumpeg.analysis.check.assembly.WallSquare} first.
 */
@NullMarked
package datumpeg.analysis.check.assembly;

import org.jspecify.annotations.NullMarked;
