/**
 * Jobs in the record: taking a job file in, and taking a job out again as the analysis wants it.
 *
 * <p>Here: what joins the record's rows with the job file's plan, and photos with their stage. Not
 * here: how rows are stored (room record), how job files are written (room jobfile), tables of
 * readings (room exchange). Read {@link datumpeg.bridge.jobs.StoredJob} first.
 */
@NullMarked
package datumpeg.bridge.jobs;

import org.jspecify.annotations.NullMarked;
