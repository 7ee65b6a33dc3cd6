/**
 * The screen that shows how things went: one check of one target of a job across its stages and
 * rounds, or one check over all jobs as a control chart.
 *
 * <p>Here: points with their uncertainty bars between the limits of deviation, in words what moved
 * by more than its uncertainty; control limits and run rules; export of picture and numbers. Not
 * here: the charts' arithmetic (room {@code datumpeg.analysis.trend}), drawing long rows (room
 * chart). Read {@link datumpeg.desktop.trend.TrendViewModel} first, then {@link
 * datumpeg.desktop.trend.JobsTrendViewModel}.
 */
@NullMarked
package datumpeg.desktop.trend;

import org.jspecify.annotations.NullMarked;
