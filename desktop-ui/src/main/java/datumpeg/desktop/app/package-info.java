/**
 * The program itself: its main class, which adds {@code desktop} to the bridge's commands, and what
 * must be there before a window can open.
 *
 * <p>Here: the composition by constructors, and start and end of the window. Not here: screens,
 * which have a room each. Read {@link datumpeg.desktop.app.Main} first.
 */
@NullMarked
package datumpeg.desktop.app;

import org.jspecify.annotations.NullMarked;
