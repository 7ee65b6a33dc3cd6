/**
 * Stages, targets, readings, and how accurate a meter is.
 *
 * <p>A target is what a reading is a reading of: a quantity and the point or points it stands
 * between. A reading is one value as delivered, in metres or radians, never altered. Rounds are
 * counted from 1; a thing that was moved starts its next round.
 *
 * <p>Worked: a meter of expanded uncertainty 1.5 mm at coverage 2 has u = 0.75 mm, split into equal
 * independent and common variances: 0.530 mm each. With a resolution of 1 mm and two points defined
 * to 1 mm each, one reading's independent part is √(0.530² + 1²/12 + 1² + 1²) = 1.538 mm.
 *
 * <p>Here: what can be measured, how a person says it, and the accuracy of one reading. Not here:
 * what follows from readings. Read {@link datumpeg.analysis.measuring.Target} and {@link
 * datumpeg.analysis.measuring.Reading} first.
 */
@NullMarked
package datumpeg.analysis.measuring;

import org.jspecify.annotations.NullMarked;
