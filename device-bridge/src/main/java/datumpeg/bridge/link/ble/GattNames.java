package datumpeg.bridge.link.ble;

import java.util.Set;

/** Numbers of the Bluetooth SIG, Assigned Numbers, "Service UUIDs" and "Characteristic UUIDs". */
public final class GattNames {
  /** Battery level, a whole number of percent. */
  public static final String BATTERY_LEVEL = assigned("2a19");

  /** The descriptor by which a characteristic says how its values are to be read. */
  public static final String PRESENTATION_FORMAT = assigned("2904");

  /**
   * Services that say something of the meter, never of what it measures: Generic Access, Generic
   * Attribute, Device Information, Battery.
   */
  static final Set<String> HOUSEKEEPING =
      Set.of(assigned("1800"), assigned("1801"), assigned("180a"), assigned("180f"));

  private GattNames() {}

  /** The UUID of a number of 16 bits: Bluetooth Core Specification, volume 3, part B, 2.5.1. */
  static String assigned(String fourDigits) {
    return "0000" + fourDigits + "-0000-1000-8000-00805f9b34fb";
  }

  /** Whether a text is a UUID in small letters. */
  public static boolean isUuid(String text) {
    return text.matches("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");
  }
}
