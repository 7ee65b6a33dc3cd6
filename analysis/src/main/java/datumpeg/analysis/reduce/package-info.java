/**
 * One class a check: readings in, deviations with their uncertainty out.
 *
 * <p>Here: what follows from a job's readings, stage by stage. Not here: least squares itself (room
 * adjust), the words of a remedy (room remedy), documents. Read {@link
 * datumpeg.analysis.reduce.Findings} first.
 */
@NullMarked
package datumpeg.analysis.reduce;

import org.jspecify.annotations.NullMarked;
