/**
 * What is wrong in a file that a person wrote: where, in which words, and what was likely meant.
 *
 * <p>Here: places, mistakes, their collection, the nearest known word. Not here: what any kind of
 * file must hold, and the exceptions of the rooms that read one. Read {@link
 * datumpeg.bridge.mistake.Mistakes} first.
 */
@NullMarked
package datumpeg.bridge.mistake;

import org.jspecify.annotations.NullMarked;
