/**
 * What to do about an outcome: which way, by how many millimetres, and whether it can still be
 * done.
 *
 * <p>What can still move is moved; what is anchored or bolted goes to the engineer. A move smaller
 * than what the meter can see is not asked for.
 *
 * <p>Worked: seats at −4.2, 0 and −1.1 mm with plates of 1, 2, 3, 5 and 10 mm in stock are packed
 * to the highest: 3 + 1 mm, nothing, 1 mm.
 *
 * <p>Where the lines go on a slab is {@link datumpeg.analysis.remedy.LinePlacement}, which frames
 * of a row to shift {@link datumpeg.analysis.remedy.Shifting}.
 *
 * <p>Here: the words and the millimetres. Not here: how a deviation was found. Read {@link
 * datumpeg.analysis.remedy.Movability} first.
 */
@NullMarked
package datumpeg.analysis.remedy;

import org.jspecify.annotations.NullMarked;
