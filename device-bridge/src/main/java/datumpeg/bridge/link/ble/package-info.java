/**
 * Bluetooth Low Energy meters, whatever library reaches them.
 *
 * <p>Here: what a backend offers, which characteristics of a meter are listened to, when a silent
 * meter is asked whether it is there, and the link made of these. Not here: D-Bus (room
 * link.ble.bluez), the native library and its process (room link.ble.tinyb), what the bytes mean
 * (room frame.gatt). Read {@link datumpeg.bridge.link.ble.BleLink} first.
 */
@NullMarked
package datumpeg.bridge.link.ble;

import org.jspecify.annotations.NullMarked;
