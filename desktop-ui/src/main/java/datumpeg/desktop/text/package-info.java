/**
 * Words and figures on screen.
 *
 * <p>Here: the one resource bundle of texts, how an outcome stands and the words for it, and how
 * lengths, limits, probabilities and times are written. Not here: sentences that analysis finds
 * (they are shown as they come), nodes. Read {@link datumpeg.desktop.text.Words} first.
 */
@NullMarked
package datumpeg.desktop.text;

import org.jspecify.annotations.NullMarked;
