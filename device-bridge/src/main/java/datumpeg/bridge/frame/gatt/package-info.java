/**
 * Values of Bluetooth LE characteristics: bytes to numbers, pure and total.
 *
 * <p>Here: the formats and units of the Characteristic Presentation Format descriptor (Bluetooth
 * Core Specification, volume 3, part G, 3.3.3.5; Assigned Numbers, "Format types" and "Units") and
 * the floats of IEEE 11073-20601. Not here: connecting, subscribing (room link.ble). Read {@link
 * datumpeg.bridge.frame.gatt.GattDecoding} first.
 */
@NullMarked
package datumpeg.bridge.frame.gatt;

import org.jspecify.annotations.NullMarked;
