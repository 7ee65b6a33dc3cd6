/**
 * The screen that shows one check of one target across its stages and rounds.
 *
 * <p>Here: the points with their uncertainty bars between the limits of deviation, and in words
 * what moved by more than its uncertainty. Not here: trends over several jobs. Read {@link
 * datumpeg.desktop.trend.TrendViewModel} first.
 */
@NullMarked
package datumpeg.desktop.trend;

import org.jspecify.annotations.NullMarked;
