/**
 * Finding out how an unknown meter speaks: bytes and what the display showed in, profiles that fit
 * out.
 *
 * <p>Here: the search, pure. Not here: the conversation with the person (room cli), ports (room
 * link), what a profile is (room meter). Read {@link datumpeg.bridge.meter.learn.Learning} first.
 */
@NullMarked
package datumpeg.bridge.meter.learn;

import org.jspecify.annotations.NullMarked;
