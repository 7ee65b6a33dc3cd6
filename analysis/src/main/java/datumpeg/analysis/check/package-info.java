/**
 * What every check stands on: a stage's readings with their accuracy, and the way from a deviation
 * to an outcome.
 *
 * <p>Here: the readings of one stage, their rounds, direct values, notes, the maker of outcomes.
 * Not here: the checks themselves (rooms check.slab, check.frame), least squares (room adjust).
 * Read {@link datumpeg.analysis.check.Check} first, then {@link
 * datumpeg.analysis.check.StageReadings}.
 */
@NullMarked
package datumpeg.analysis.check;

import org.jspecify.annotations.NullMarked;
