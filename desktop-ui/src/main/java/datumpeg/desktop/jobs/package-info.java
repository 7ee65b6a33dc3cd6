/**
 * The screen that lists the jobs of a record.
 *
 * <p>Here: every job with its stages as a strip of counts in words and shapes. Not here: what was
 * found (room findings). Read {@link datumpeg.desktop.jobs.JobsViewModel} first.
 */
@NullMarked
package datumpeg.desktop.jobs;

import org.jspecify.annotations.NullMarked;
