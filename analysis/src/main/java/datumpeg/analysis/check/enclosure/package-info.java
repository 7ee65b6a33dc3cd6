/**
 * The checks of what closes the building: end-wall posts, openings, roof bays, gutters, sheets.
 *
 * <p>Here: one class a check. Not here: the frames that carry it (room check.frame). Read {@link
 * datumpeg.analysis.check.enclosure.OpeningShape} first.
 */
@NullMarked
package datumpeg.analysis.check.enclosure;

import org.jspecify.annotations.NullMarked;
