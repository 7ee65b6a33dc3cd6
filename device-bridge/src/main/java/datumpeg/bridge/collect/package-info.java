/**
 * The running session: values come in from links, captures and the keyboard, are put to their
 * targets, and are handed to the record one by one.
 *
 * <p>A value is acknowledged only after its commit. Live measuring and replaying a capture go
 * through the same {@link datumpeg.bridge.collect.Collector}.
 *
 * <p>Here: assigning, accepting, undoing. Not here: bytes (rooms link, frame, meter), storage (room
 * record), printing (room cli). Read {@link datumpeg.bridge.collect.Collector} first.
 */
@NullMarked
package datumpeg.bridge.collect;

import org.jspecify.annotations.NullMarked;
