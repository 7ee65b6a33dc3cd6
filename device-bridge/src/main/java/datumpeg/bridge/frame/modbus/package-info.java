/**
 * Values in Modbus registers: bytes to numbers, pure and total.
 *
 * <p>Here: the order of words and bytes in registers, and what number they make. Not here: the
 * transport with its addresses and checksums, which a library does (room link.modbus). Read {@link
 * datumpeg.bridge.frame.modbus.RegisterDecoding} first.
 */
@NullMarked
package datumpeg.bridge.frame.modbus;

import org.jspecify.annotations.NullMarked;
