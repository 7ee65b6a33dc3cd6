package datumpeg.bridge.collect;

import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.RegisterBlock;
import datumpeg.bridge.link.ble.BleBackend;
import datumpeg.bridge.link.ble.BleLink;
import datumpeg.bridge.link.ble.Patience;
import datumpeg.bridge.link.ble.bluez.BluezBackend;
import datumpeg.bridge.link.ble.tinyb.TinybBackend;
import datumpeg.bridge.link.modbus.ModbusLink;
import datumpeg.bridge.link.serial.SerialLink;
import datumpeg.bridge.meter.MeterLanguage.CharacteristicValues;
import datumpeg.bridge.meter.MeterLanguage.Registers;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.MeterProfiles;
import java.util.Map;
import java.util.Set;

/**
 * Opens live links of any kind. Immutable.
 *
 * @param systemBus the D-Bus address at which Bluetooth LE is reached
 * @param asking when a station is asked that never speaks by itself
 * @param patience with Bluetooth LE meters
 */
public record LiveLinks(String systemBus, Asking asking, Patience patience) {
  private static final String BUS = "DBUS_SYSTEM_BUS_ADDRESS";

  /** When a station is asked that never speaks by itself. */
  public enum Asking {
    /** As often as its profile says. */
    AS_PROFILE_SAYS,
    /** Only when a person says so: a value that comes every so often is aimed at nothing. */
    ON_DEMAND
  }

  /** As the environment variables say: D-Bus Specification, "System message bus". */
  public static LiveLinks of(Map<String, String> environment) {
    return of(environment, Patience.USUAL);
  }

  /** The same, with this patience. */
  public static LiveLinks of(Map<String, String> environment, Patience patience) {
    return new LiveLinks(
        environment.getOrDefault(BUS, BluezBackend.SYSTEM_BUS), Asking.AS_PROFILE_SAYS, patience);
  }

  /** The same, asking stations only when a person says so. */
  LiveLinks onDemand() {
    return new LiveLinks(systemBus, Asking.ON_DEMAND, patience);
  }

  /** The profile of a meter whose link says nothing of it. */
  public static MeterProfile usualProfile(LinkAddress address) {
    return address instanceof LinkAddress.Ble
        ? MeterProfiles.SELF_DESCRIBING
        : MeterProfiles.GENERAL_TEXT_LINE;
  }

  /**
   * Opens a link to a meter of this profile.
   *
   * @throws datumpeg.bridge.link.LinkUnavailableException if it cannot be opened
   * @throws IllegalArgumentException if the address is not that of a live link
   */
  public Link open(
      LinkAddress address, MeterProfile profile, LinkClock clock, LinkListener listener) {
    if (address instanceof LinkAddress.Serial serial) {
      return profile.language() instanceof Registers registers
          ? ModbusLink.open(serial, block(registers), clock, listener)
          : SerialLink.open(serial, clock, listener);
    }
    if (address instanceof LinkAddress.Ble ble) {
      Set<String> wanted =
          profile.language() instanceof CharacteristicValues values
              ? Set.of(values.characteristic())
              : Set.of();
      return BleLink.open(ble, backend(ble.backend()), wanted, clock, listener);
    }
    throw new IllegalArgumentException(address.text() + " is not a live link");
  }

  private RegisterBlock block(Registers registers) {
    return asking == Asking.ON_DEMAND ? registers.block().onDemand() : registers.block();
  }

  /** How Bluetooth LE meters are reached. */
  public BleBackend backend(LinkAddress.Ble.Backend backend) {
    return switch (backend) {
      case BLUEZ -> new BluezBackend(systemBus, patience);
      case TINYB -> new TinybBackend(systemBus, patience);
    };
  }
}
