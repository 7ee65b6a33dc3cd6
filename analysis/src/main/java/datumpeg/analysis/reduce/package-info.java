/**
 * From a job and its readings to the findings: all checks of all stages, grouped by cause,
 * answered.
 *
 * <p>Here: what follows from a job's readings, stage by stage. Not here: the checks themselves
 * (rooms check.*), documents. Read {@link datumpeg.analysis.reduce.Findings} first.
 */
@NullMarked
package datumpeg.analysis.reduce;

import org.jspecify.annotations.NullMarked;
