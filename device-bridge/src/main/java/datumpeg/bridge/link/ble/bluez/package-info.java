/**
 * Bluetooth LE meters through BlueZ over D-Bus, in Java alone: the only user of dbus-java and
 * bluez-dbus.
 *
 * <p>Here: the way to the system's Bluetooth service, its objects as they are now, its signals. Of
 * bluez-dbus only the interfaces are used: what it caches of objects goes stale with every loss.
 * Not here: which characteristics are listened to, what silence means (room link.ble). Read {@link
 * datumpeg.bridge.link.ble.bluez.BluezBackend} first.
 */
@NullMarked
package datumpeg.bridge.link.ble.bluez;

import org.jspecify.annotations.NullMarked;
