/**
 * What a machine lacks for meters to be read on it, in plain words.
 *
 * <p>Here: looking, below a root that a test may set, and what helps. Nothing here opens a port or
 * fails: what cannot be looked at is said. Not here: printing (room cli). Read {@link
 * datumpeg.bridge.doctor.Examination} first.
 */
@NullMarked
package datumpeg.bridge.doctor;

import org.jspecify.annotations.NullMarked;
