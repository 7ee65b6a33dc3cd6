/**
 * The screen on which a stage is signed off.
 *
 * <p>Here: the check list of a stage, its cautions, signing and accepting as it is. Not here: by
 * what rules an item closes (room {@code datumpeg.analysis.signoff}). Read {@link
 * datumpeg.desktop.signoff.SignOffViewModel} first.
 */
@NullMarked
package datumpeg.desktop.signoff;

import org.jspecify.annotations.NullMarked;
