/**
 * What was found, over time: of one job across its stages and rounds, of one check over many jobs.
 *
 * <p>Here: an outcome with when, where and by whom it came about; series of them; control charts
 * and run rules; what moved between two rounds. Not here: groups compared with each other (room
 * compare), how an outcome is found (room reduce), drawings. Read {@link
 * datumpeg.analysis.trend.DatedOutcome} first, then {@link datumpeg.analysis.trend.TrendSeries}.
 */
@NullMarked
package datumpeg.analysis.trend;

import org.jspecify.annotations.NullMarked;
