/**
 * The screen that shows what a job's readings say, stage by stage.
 *
 * <p>Here: the answer first, then what is behind it with what to do, the plan with its deviations
 * exaggerated, and every outcome in a table. Not here: how anything is found (room {@code
 * datumpeg.analysis.reduce}). Read {@link datumpeg.desktop.findings.FindingsViewModel} first.
 */
@NullMarked
package datumpeg.desktop.findings;

import org.jspecify.annotations.NullMarked;
