/**
 * Modbus RTU stations on a serial line: registers that are asked for, by a library over our own
 * serial link.
 *
 * <p>Here: asking, its answers as the bytes of a link, a station that does not answer. Not here:
 * the port and its loss (room link.serial), what number the registers hold (room frame.modbus).
 * Read {@link datumpeg.bridge.link.modbus.ModbusLink} first.
 */
@NullMarked
package datumpeg.bridge.link.modbus;

import org.jspecify.annotations.NullMarked;
