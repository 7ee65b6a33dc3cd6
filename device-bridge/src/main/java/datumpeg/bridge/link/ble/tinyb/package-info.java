/**
 * Bluetooth LE meters through TinyB: the only user of that native library.
 *
 * <p>Here: the child process that alone loads the library, with its own main, and the parent's side
 * that starts it afresh for each connection, watches it, and takes its death as a lost link. The
 * two speak lines of text. Not here: which characteristics are listened to, what silence means
 * (room link.ble). Read {@link datumpeg.bridge.link.ble.tinyb.TinybBackend} first.
 */
@NullMarked
package datumpeg.bridge.link.ble.tinyb;

import org.jspecify.annotations.NullMarked;
