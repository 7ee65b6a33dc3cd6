/**
 * The checks of the slab: its size and shape, and its levels.
 *
 * <p>Here: one class a family of checks that shares one adjustment. Not here: what stands on the
 * slab (room check.frame). Read {@link datumpeg.analysis.check.slab.SlabShape} first.
 */
@NullMarked
package datumpeg.analysis.check.slab;

import org.jspecify.annotations.NullMarked;
