/**
 * Checks of the house as a whole: the walls between rooms, the launcher, the documents at the top
 * level. They stand in this module because its test class path sees all three.
 */
@NullMarked
package datumpeg.house;

import org.jspecify.annotations.NullMarked;
