/**
 * Bytes to frames to values, pure: no port, no clock, no file.
 *
 * <p>Here: cutting a stream of bytes into complete messages, and reading one message. Every
 * function is total: any bytes in, never an exception, bounded memory. Not here: which meter speaks
 * how (room meter), where bytes come from (room link). Read {@link
 * datumpeg.bridge.frame.TextLineFramer} first.
 */
@NullMarked
package datumpeg.bridge.frame;

import org.jspecify.annotations.NullMarked;
