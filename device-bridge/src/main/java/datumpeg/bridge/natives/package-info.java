/**
 * Native libraries that come inside of ours: where they are put on a machine before they are
 * loaded, and what is said when no place takes them.
 *
 * <p>Here: the two folders that are tried. Not here: which library it is, and what it does (rooms
 * record.sqlite, link.serial, link.ble.tinyb). Read {@link datumpeg.bridge.natives.NativeFiles}
 * first.
 */
@NullMarked
package datumpeg.bridge.natives;

import org.jspecify.annotations.NullMarked;
