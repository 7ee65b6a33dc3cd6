/**
 * The words of the checks: what each is called, what is wrong, which outcomes are one cause, and
 * what to move about it.
 *
 * <p>Here: one class for each family of checks, and {@link datumpeg.analysis.tell.Tellings}, which
 * finds the family of a check. Not here: how far something has to move (room {@code remedy}), which
 * outcomes come first (room {@code reduce}), how a page looks (room {@code report}). Read {@link
 * datumpeg.analysis.tell.Tellings} first, then one family, such as that of the frames.
 */
@NullMarked
package datumpeg.analysis.tell;

import org.jspecify.annotations.NullMarked;
