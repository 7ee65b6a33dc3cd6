/**
 * How one user wants the window, and the screen that asks.
 *
 * <p>Here: theme, size of letters, units, the last state, and the file they stand in. Not here:
 * what a theme looks like (the style sheets beside room control). Read {@link
 * datumpeg.desktop.setting.Settings} first.
 */
@NullMarked
package datumpeg.desktop.setting;

import org.jspecify.annotations.NullMarked;
