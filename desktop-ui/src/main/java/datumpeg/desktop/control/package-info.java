/**
 * Nodes that every screen may use and that know no job.
 *
 * <p>Here: the shapes by which something is known to conform or not, a drawing that fills its
 * place, an axis' round numbers, the lists that say what a screen is asked and what of them is
 * kept, the style sheet. Not here: anything that knows what it shows. Read {@link
 * datumpeg.desktop.control.StandingMark} first.
 */
@NullMarked
package datumpeg.desktop.control;

import org.jspecify.annotations.NullMarked;
