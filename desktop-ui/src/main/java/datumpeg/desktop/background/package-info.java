/**
 * The one way off the JavaFX thread and back onto it.
 *
 * <p>Here: a thread that does one thing again and again, and the hand-over of its newest result.
 * Not here: what is done there. Read {@link datumpeg.desktop.background.RepeatedWork} first, then
 * {@link datumpeg.desktop.background.NewestValue}.
 */
@NullMarked
package datumpeg.desktop.background;

import org.jspecify.annotations.NullMarked;
