/**
 * Lengths and angles as people write them, and as this program keeps them: metres and radians.
 *
 * <p>Here: units with their exact factors, parsing, display. Not here: accuracy and uncertainty,
 * and what a length is a length of. Read {@link datumpeg.analysis.quantity.Unit} first.
 */
@NullMarked
package datumpeg.analysis.quantity;

import org.jspecify.annotations.NullMarked;
