/**
 * The screen that compares crews, sites, slab layers or meters by one check.
 *
 * <p>Here: strips of what was found in each group with mean and interval, numbers, and in sentences
 * what may and may not be concluded. Not here: the statistics (room {@code
 * datumpeg.analysis.compare}). Read {@link datumpeg.desktop.compare.CompareViewModel} first.
 */
@NullMarked
package datumpeg.desktop.compare;

import org.jspecify.annotations.NullMarked;
