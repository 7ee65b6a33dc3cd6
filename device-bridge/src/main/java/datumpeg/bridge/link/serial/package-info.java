/**
 * Serial ports: the only user of jSerialComm.
 *
 * <p>Here: opening a port with its settings, reading it on one thread, saying in a sentence why it
 * could not be opened or that it is gone. Not here: what the bytes mean. Read {@link
 * datumpeg.bridge.link.serial.SerialLink} first.
 */
@NullMarked
package datumpeg.bridge.link.serial;

import org.jspecify.annotations.NullMarked;
