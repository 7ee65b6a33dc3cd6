/**
 * Meter profiles: how a kind of meter speaks, as data.
 *
 * <p>Here: a profile with its identity, and the stream that applies a profile to the bytes of one
 * link and counts what came. Not here: ports and clocks (room link), cutting and reading bytes
 * (room frame), what an instrument of the user is worth (analysis). Read {@link
 * datumpeg.bridge.meter.MeterProfile} first.
 */
@NullMarked
package datumpeg.bridge.meter;

import org.jspecify.annotations.NullMarked;
