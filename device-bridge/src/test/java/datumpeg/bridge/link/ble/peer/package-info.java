/**
 * An {@code org.bluez} service of the tests' own on a private bus, with invented meters.
 *
 * <p>Objects, properties and order of signals as in BlueZ's D-Bus documents (doc/org.bluez.*.rst of
 * the BlueZ sources) and as a real daemon of release 5.66 was seen to send them. Read {@link
 * datumpeg.bridge.link.ble.peer.BluezPeer} first.
 */
@NullMarked
package datumpeg.bridge.link.ble.peer;

import org.jspecify.annotations.NullMarked;
