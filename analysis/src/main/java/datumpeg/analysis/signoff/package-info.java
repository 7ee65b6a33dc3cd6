/**
 * Hold points: what must be settled before work goes past a stage, and whether it is.
 *
 * <p>Here: the check list of a stage, the rules by which an item and a hold point close. Not here:
 * what was found (room reduce), how names and reasons are stored. Read {@link
 * datumpeg.analysis.signoff.HoldPoint} first.
 */
@NullMarked
package datumpeg.analysis.signoff;

import org.jspecify.annotations.NullMarked;
