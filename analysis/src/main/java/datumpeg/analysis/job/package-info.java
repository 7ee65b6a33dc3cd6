/**
 * One job as its file describes it: building, slab, tolerances, meters, stages.
 *
 * <p>Here: the description as a whole. Not here: the text of job files, readings, results. Read
 * {@link datumpeg.analysis.job.Job} first.
 */
@NullMarked
package datumpeg.analysis.job;

import org.jspecify.annotations.NullMarked;
