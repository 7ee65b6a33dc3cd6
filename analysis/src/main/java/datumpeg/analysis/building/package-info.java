/**
 * The building as designed, and its set-out: the dimensions that follow from the drawing.
 *
 * <p>Stand outside end 1 facing end n: line A is on the right hand, B on the left; x runs forward
 * along the length, y from A toward B, z up; the origin is slab corner A1. Frames are numbered 1 …
 * n from end 1. Lengths are metres, angles radians.
 *
 * <p>Worked: bays 6 m + 6 m + 6 m on an 18 m slab with end line offset 0 and columns 64 mm wide put
 * the column centres at x = 0.032, 6, 12 and 17.968 m; girt 64 mm and column depth 150 mm put the
 * column line 214 mm in, and on a 9 m span leave a clear span of 9000 − 2·214 = 8572 mm.
 *
 * <p>Here: names of points, dimensions of the plan, positions that follow. Not here: readings,
 * tolerances, job-file text. Read {@link datumpeg.analysis.building.SetOut} first.
 */
@NullMarked
package datumpeg.analysis.building;

import org.jspecify.annotations.NullMarked;
