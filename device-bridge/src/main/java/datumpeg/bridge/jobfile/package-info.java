/**
 * The text of a job file as a validated job: building, slab, openings, tolerances, meters, stages.
 *
 * <p>One class a table of the file. Each adds what is wrong to one list, so that a person hears of
 * all of it at once, each with file, line, column and the nearest known word.
 *
 * <p>Here: keys, their types and bounds, what must fit together. Not here: TOML itself (room toml),
 * the dimensions that follow (room building of the analysis), where jobs are kept (room jobs). Read
 * {@link datumpeg.bridge.jobfile.JobFile} first.
 */
@NullMarked
package datumpeg.bridge.jobfile;

import org.jspecify.annotations.NullMarked;
