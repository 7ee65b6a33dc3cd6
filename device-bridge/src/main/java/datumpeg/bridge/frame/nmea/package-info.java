/**
 * Sentences of NMEA 0183, pure and total.
 *
 * <p>Here: a sentence with its checksum, and the transducer measurements (XDR) in it. Not here:
 * cutting lines (room frame). Read {@link datumpeg.bridge.frame.nmea.TransducerDecoding} first.
 */
@NullMarked
package datumpeg.bridge.frame.nmea;

import org.jspecify.annotations.NullMarked;
