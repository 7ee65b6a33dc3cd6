/**
 * A meter held against what is known, and what its checks say over time.
 *
 * <p>Here: the error a check finds with its uncertainty, the verdict on the meter's stated
 * accuracy, the readings that a bad check puts in doubt. Not here: what a meter states (room
 * measuring), how a check is stored (the bridge). Read {@link datumpeg.analysis.drift.MeterCheck}
 * first.
 *
 * <p>Worked numbers: 5.003 m, 7.002 m and 12.001 m on three points in a line come to a zero
 * constant of 5.003 + 7.002 − 12.001 = 0.004 m. A level that reads 1.500 and 1.400 m from the
 * middle, then 1.620 and 1.526 m from beside the first peg, with sights of 2 and 32 m, rises by
 * ((1.620 − 1.526) − (1.500 − 1.400)) / (2 − 32) = 0.0002 m in a metre.
 */
@NullMarked
package datumpeg.analysis.drift;

import org.jspecify.annotations.NullMarked;
