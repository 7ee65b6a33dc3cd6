/**
 * The checks of the standing frames: spacing, lean, clear distances.
 *
 * <p>Here: one class a family of checks that shares one adjustment. Not here: the slab (room
 * check.slab). Read {@link datumpeg.analysis.check.frame.FrameSpacing} first.
 */
@NullMarked
package datumpeg.analysis.check.frame;

import org.jspecify.annotations.NullMarked;
